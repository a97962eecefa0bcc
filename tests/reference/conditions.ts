/** Conditions that keys spell, `power_w_at_1725_rpm`, made inputs of their own. */
import type { JsonObject } from './caseFile.ts';
import { NotUnderstood } from './given.ts';
import { type Condition, type Key, parseKey } from './keys.ts';

interface Plain {
  readonly inputs: JsonObject;
  readonly expected: JsonObject;
}

function statable({ text, input, value }: Condition): readonly [input: string, value: number] {
  if (input === undefined) throw new NotUnderstood(`the condition ${text} is not known`);
  return [input, value];
}

/**
 * The same case with each condition as an input. Where the case has several values of what the
 * condition fixes, each takes a number: `speed_rpm`, `power_w` and `power_w_at_1725_rpm` are
 * `1_speed_rpm`, `1_power_w`, `2_speed_rpm` and `2_power_w`.
 */
export function unconditioned(inputs: JsonObject, key: Key): Plain {
  const { condition } = key;
  if (condition === undefined) throw new NotUnderstood(`the value ${key.raw} has no condition`);
  const entries = Object.entries(inputs).map(
    ([raw, value]) => ({ raw, value, key: parseKey(raw) }) as const,
  );
  const [stating, at] = statable(condition);
  const isStated = entries.some((entry) => entry.key?.name === parseKey(stating)?.name);
  const texts = [...new Set(entries.flatMap((entry) => entry.key?.condition?.text ?? []))];
  if (!isStated && texts.every((text) => text === condition.text)) {
    const bare = entries.map(({ raw, value, ...entry }) => [
      entry.key?.condition?.rest ?? raw,
      value,
    ]);
    return {
      inputs: { ...Object.fromEntries(bare), [stating]: at },
      expected: { [condition.rest]: null },
    };
  }
  const places = [...new Set([...(isStated ? [''] : []), ...texts, condition.text])];
  const placeOf = (text: string): number => places.indexOf(text) + 1;
  const numbered = entries.flatMap(({ raw, value, ...entry }): [string, typeof value][] => {
    const own = entry.key?.condition;
    if (own === undefined)
      return [[isStated && entry.key?.index === undefined ? `1_${raw}` : raw, value]];
    const [name, number] = statable(own);
    const place = placeOf(own.text);
    return [
      [`${place}_${own.rest}`, value],
      [`${place}_${name}`, number],
    ];
  });
  const place = placeOf(condition.text);
  return {
    inputs: { ...Object.fromEntries(numbered), [`${place}_${stating}`]: at },
    expected: { [`${place}_${condition.rest}`]: null },
  };
}
