import Caution from '#components/Caution.astro';
import MarginNote from '#components/MarginNote.astro';
import Source from '#components/Source.astro';
import UnitsNote from '#components/UnitsNote.astro';
import Wide from './Wide.astro';

/**
 * The tags a lesson may use, each an Astro wrapper that takes plain data.
 *
 * A new tag is one line here; lessons themselves import nothing.
 */
export const lessonTags = {
  Caution,
  MarginNote,
  Source,
  UnitsNote,
  Wide,
};
