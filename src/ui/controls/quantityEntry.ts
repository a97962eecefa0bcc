import { type UnitChoice, unitFor } from '#units/choice.ts';
import { editable } from '#units/format.ts';
import { parse, type Range } from '#units/parse.ts';
import type { Quantity } from '#units/quantities.ts';
import { sentenceFor } from '#units/sentences.ts';
import type { Entry } from './entry.ts';

/**
 * Writes and reads a stored value in the reader's unit; a problem comes back as its sentence. What
 * is shown always reads back as what is stored. `name` is the field's own, as it stands after "the".
 */
export function quantityEntry(
  quantity: Quantity,
  choice: UnitChoice,
  range: Range = {},
  name?: string,
): Entry<number> {
  const unit = unitFor(choice, quantity);
  return {
    format: (value) => editable(quantity, value, unit),
    parse: (text) => {
      const result = parse(text, quantity, unit, range);
      return result.ok
        ? { ok: true, value: result.si }
        : { ok: false, problem: sentenceFor(result, name) };
    },
  };
}
