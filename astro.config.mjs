import { unified } from '@astrojs/markdown-remark';
import mdx from '@astrojs/mdx';
import preact from '@astrojs/preact';
import { defineConfig } from 'astro/config';
import rehypeKatex from 'rehype-katex';
import remarkMath from 'remark-math';
import { glossaryLinks } from './src/course/lesson/glossary/linkTerms.ts';
import { offlineCopy } from './src/layouts/offline/offlineCopy.mjs';
import { searchIndex } from './src/search/searchIndex.ts';
import { leanMathsFonts } from './src/styles/leanMathsFonts.mjs';

/*
 * What every page with a widget needs travels as three files rather than as twenty: together they pack
 * better than apart.
 */
const groups = [
  { name: 'runtime', test: /node_modules\/@?preact\/|preload-helper|rolldown.runtime/ },
  {
    name: 'kit',
    test: /src\/(units\/|ui\/charts\/(?!(MonthBars|ring)\.)|ui\/controls\/(?!(minutesEntry|plainEntry|QuantityRange|roundStep)\.)|ui\/figure\/(?!(padFollower|explorable|twoMemories|ownPad|linkState)\.)|ui\/loading\/Guard\.|core\/base\/|pad\/(store\/padKey|document\/fragment)\.)|node_modules\/d3-(?!random)/,
  },
  {
    name: 'explorable',
    test: /src\/ui\/(figure\/(explorable|twoMemories|ownPad|linkState)|controls\/(QuantityRange|roundStep))\.tsx?/,
  },
  {
    name: 'hydraulics',
    test: /src\/(core\/(pump\/(operatingPoint|pump|power|npsh)|hydraulics\/(circuit|pipe)|water\/water|fit\/gauges)|explorables\/example\/machine)\.ts/,
  },
  // Named apart, or a lesson that asks for one of them would bring all that reads a pad.
  {
    name: 'day',
    test: /src\/core\/(day\/(day|dayReport)|tariff\/(pricing|tariff|tariffProblems)|time\/(calendar|spans)|water\/mixing)\.ts/,
  },
  { name: 'limits', test: /src\/core\/day\/(limits|needs)\.ts/ },
  { name: 'pad-state', test: /src\/core\/fit\/(padModel|fitPower)\.ts/ },
  {
    name: 'fit',
    test: /src\/core\/(fit\/(fitPad|padReadings|padChecks|padEvidence|padNarrowing|padNeighbourhood)|numerics\/band)\.ts/,
  },
  {
    name: 'pad',
    test: /src\/(pad\/(model\/(assemble|firstFit|someDay)|store\/padStore)|explorables\/example\/padMachine|ui\/loading\/(Later|Door))\.tsx?/,
  },
  {
    name: 'form',
    test: /src\/padPage\/form\/(form|Tools|text|spot|steps|Entry|Step|Start|view)\.tsx?/,
  },
];

export default defineConfig({
  outDir: process.env.SITE_DIST ?? 'dist',
  devToolbar: { enabled: false },
  // The index is written before all that is there is kept for use offline.
  integrations: [preact(), mdx(), searchIndex(), offlineCopy()],
  markdown: {
    syntaxHighlight: false,
    processor: unified({
      // A single dollar is money here, so maths always takes two.
      remarkPlugins: [[remarkMath, { singleDollarTextMath: false }], glossaryLinks],
      rehypePlugins: [[rehypeKatex, { strict: 'error', throwOnError: true }]],
      // Curly-quote guessing would turn marks like 2" into the wrong glyph.
      smartypants: false,
    }),
  },
  build: { inlineStylesheets: 'never' },
  security: {
    csp: {
      directives: [
        "default-src 'self'",
        "img-src 'self' data: blob:",
        "connect-src 'self'",
        "worker-src 'self'",
        "object-src 'none'",
        "base-uri 'none'",
        "form-action 'self'",
      ],
      // Set maths needs style attributes; no style element is ever inline.
      styleDirective: {
        resources: [
          { resource: "'self'", kind: 'element' },
          { resource: "'unsafe-inline'", kind: 'attribute' },
        ],
      },
    },
  },
  vite: {
    plugins: [leanMathsFonts()],
    // Keep every script and font a file of its own, so the policy can name it.
    build: { assetsInlineLimit: 0 },
    environments: {
      client: { build: { rolldownOptions: { output: { codeSplitting: { groups } } } } },
    },
  },
});
