import { defineCollection, reference } from 'astro:content';
import { glob } from 'astro/loaders';
import { z } from 'astro/zod';
import { cautionIds } from '#content/cautions.ts';
import { sourceIds } from '#content/sources.ts';
import { unitIds } from '#content/units.ts';

/** A text that is there and not blank. */
const words = (field: string) =>
  z
    .string({ error: `Lesson front matter: "${field}" must be text.` })
    .trim()
    .min(1, `Lesson front matter: "${field}" is empty.`);

/** One of a list of known short names. */
const known = (field: string, ids: readonly [string, ...string[]] | string[]) =>
  z.enum(ids as [string, ...string[]], {
    error: ({ input }) =>
      `Lesson front matter: "${field}" has "${String(input)}"; known are ${ids.join(', ')}.`,
  });

/** A whole number within bounds. */
const whole = (field: string, least: number, greatest: number) => {
  const rule = `Lesson front matter: "${field}" must be a whole number from ${least} to ${greatest}.`;
  return z.int({ error: rule }).min(least, rule).max(greatest, rule);
};

/** The file's own name is the lesson's id and its address, so a file is never renamed. */
export const lesson = z.strictObject(
  {
    /** Title as the reader sees it, without a full stop. */
    title: words('title'),
    /** Which part of the course it belongs to. */
    unit: known('unit', unitIds),
    /** Place in the whole course, counted from 1; the list and "next" follow it. */
    order: whole('order', 1, 99),
    /** How long an attentive reader needs. */
    minutes: whole('minutes', 1, 90),
    /** What the reader can do afterwards; each starts with a verb. */
    objectives: z
      .array(words('objectives'))
      .min(1, 'Lesson front matter: "objectives" needs at least one.'),
    /** Lessons that come before, by their id. */
    prerequisites: z.array(reference('lessons')).default([]),
    /** The question to guess at, put before anything is explained. */
    question: words('question'),
    /** One sentence for the list of lessons and for search results. */
    summary: words('summary'),
    /** Where the figures come from: short names in content/sources.ts. */
    sources: z
      .array(known('sources', sourceIds))
      .min(1, 'Lesson front matter: "sources" needs at least one.'),
    /** Warnings that apply: short names in content/cautions.ts. */
    cautions: z.array(known('cautions', cautionIds)).default([]),
  },
  {
    error: (issue) =>
      issue.code === 'unrecognized_keys'
        ? `Lesson front matter: no field is called ${issue.keys.join(', ')}.`
        : undefined,
  },
);

export const collections = {
  lessons: defineCollection({
    loader: glob({ pattern: '*.mdx', base: './content/lessons' }),
    schema: lesson,
  }),
};
