/** Where the reader's choice of day, night or projector is kept. */
export const themeKey = 'cubelaw-theme';

/**
 * Sets the stored look before anything is drawn, then serves the switch.
 *
 * It stands in the page itself, so that a page without any other script keeps its switch.
 */
export const themeScript = `(()=>{
const root=document.documentElement,key='${themeKey}';
const looks=['light','dark','projector'];
const show=look=>{if(looks.includes(look))root.dataset.theme=look;else delete root.dataset.theme};
let stored='';try{stored=localStorage.getItem(key)||''}catch{}
show(stored);
addEventListener('DOMContentLoaded',()=>{
const pick=document.querySelector('[data-theme-choice]');if(!pick)return;
pick.value=root.dataset.theme||'';
pick.addEventListener('change',()=>{show(pick.value);try{localStorage.setItem(key,pick.value)}catch{}});
});
})()`;
