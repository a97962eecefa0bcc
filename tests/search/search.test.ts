import MiniSearch from 'minisearch';
import { describe, expect, it } from 'vitest';
import { finderFrom, piecesOf, sentencesOf } from '#search/finder.ts';
import { createModel } from '#search/model.ts';
import { indexOptions, type Place } from '#search/places.ts';
import { readPage } from '#search/readPage.ts';
import { outcome } from '#search/text.ts';

const place = (id: number, page: string, heading: string, text: string): Place => ({
  id,
  at: `/${id}/`,
  page,
  heading,
  text,
});

function finderOf(places: readonly Place[]) {
  const index = new MiniSearch(indexOptions);
  index.addAll(places);
  return finderFrom(JSON.stringify(index));
}

const finder = finderOf([
  place(1, 'Friction', 'Why', 'Water rubs along the wall.\nA rough wall brakes the water more.'),
  place(2, 'Glossary', 'Friction loss', 'Head that is used up along straight pipe.'),
  place(3, 'Velocity', '', 'Elbows turn the pipe. The wall is thick.'),
]);

const ids = (words: string) => finder(words).map(({ at }) => at);
const marked = (words: string) =>
  finder(words)[0]
    ?.sentence.map(({ text, hit }) => (hit ? `[${text}]` : text))
    .join('');

describe('finding', () => {
  it('every word must be there, in the title or in the text', () => {
    expect(ids('wall').sort()).toEqual(['/1/', '/3/']);
    expect(ids('wall rough')).toEqual(['/1/']);
    expect(ids('wall spillway')).toEqual([]);
    expect(ids('  ')).toEqual([]);
  });

  it('a heading counts for more than a mention', () => {
    expect(ids('friction')[0]).toBe('/2/');
  });

  it('a word is found before it is finished, and with one letter wrong', () => {
    expect(ids('elb')).toEqual(['/3/']);
    expect(ids('elbwos')).toEqual([]);
    expect(ids('elbow')).toEqual(['/3/']);
    expect(ids('ellbows')).toEqual(['/3/']);
  });

  it('the sentence shown is the one with most of the words, each marked', () => {
    expect(marked('rough wall')).toBe('A [rough] [wall] brakes the water more.');
    expect(marked('friction loss')).toBe('Head that is used up along straight pipe.');
  });
});

describe('sentences', () => {
  it('end at blocks and at full stops, not within numbers', () => {
    expect(sentencesOf('At 6.5 ft/s it sings. Then more.\nLast')).toEqual([
      'At 6.5 ft/s it sings.',
      'Then more.',
      'Last',
    ]);
  });

  it('are cut at whole words only, and lose nothing', () => {
    const pieces = piecesOf('Head, ahead, head.', ['head']);
    expect(pieces.map(({ text }) => text).join('')).toBe('Head, ahead, head.');
    expect(pieces.filter(({ hit }) => hit).map(({ text }) => text)).toEqual(['Head', 'head']);
  });
});

describe('the words about it', () => {
  it('say what to do or what became of it', () => {
    expect(outcome('', 'ready', 0)).toBe('Type a word, or a few: all of them must be there.');
    expect(outcome('x', 'waiting', 0)).toBe('Fetching the index.');
    expect(outcome('x', 'unreachable', 0)).toContain('could not be fetched');
    expect(outcome(' x ', 'ready', 0)).toContain('Nothing has “x”.');
    expect(outcome('x', 'ready', 1)).toBe('One place found.');
    expect(outcome('x', 'ready', 2)).toBe('2 places found, the nearest first.');
    expect(outcome('x', 'ready', 50)).toContain('the nearest 20 are shown');
  });
});

describe('the index', () => {
  it('is fetched once, and again after it could not be reached', async () => {
    let asked = 0;
    const model = createModel(() => {
      asked += 1;
      return asked === 1 ? Promise.reject(new Error('gone')) : Promise.resolve(finder);
    });
    await model.load();
    expect(model.state.value).toBe('unreachable');
    expect(model.found.value).toEqual([]);
    model.words.value = 'elbows';
    await Promise.all([model.load(), model.load()]);
    expect(asked).toBe(2);
    expect(model.state.value).toBe('ready');
    expect(model.found.value.map(({ at }) => at)).toEqual(['/3/']);
  });
});

describe('reading a page', () => {
  const html = `<body><nav>Menu</nav><main><h1>Friction</h1><p>First <em>words</em>.</p>
    <h2 id="why">Why</h2><p>Because.</p><div hidden>The answer</div><script>let x</script>
    <section class="check"><p>A question</p></section><p>And <span class="katex">Q</span> more.</p>
    <dl><div id="bore" data-search="Bore"><dt>Bore</dt><dd>The inside.</dd></div></dl></main></body>`;

  it('cuts the prose at headings and entries, and leaves out menus, maths and answers', () => {
    expect(readPage(html)).toEqual({
      title: 'Friction',
      sections: [
        { anchor: '', heading: '', text: 'First words.' },
        { anchor: 'why', heading: 'Why', text: 'Because.\nAnd more.' },
        { anchor: 'bore', heading: 'Bore', text: 'The inside.' },
      ],
    });
  });

  it('a page without a main part has nothing to find', () => {
    expect(readPage('<p>x</p>')).toEqual({ title: '', sections: [] });
  });
});
