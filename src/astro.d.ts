// Lets plain tsc follow an import of an Astro component; `astro check` knows its true props.
declare module '*.astro' {
  const component: import('astro/runtime/server/index.js').AstroComponentFactory;
  // biome-ignore lint/style/noDefaultExport: that is how a component module exports itself.
  export default component;
}
