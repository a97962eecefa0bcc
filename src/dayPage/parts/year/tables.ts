/** The tables of the year. */
import type { TableData } from '#ui/charts/Table.tsx';
import { formatMoney } from '#units/money.ts';
import { monthNames } from '#units/monthNames.ts';
import { noValue } from '#units/numerals.ts';
import type { Amounts, YearBeside } from './beside.ts';
import type { Measure, Worth, YearModel } from './model.ts';
import { besideTitle, hourText, measureWords, say, years } from './text.ts';

const orDash = (value: number | null, words: (value: number) => string) =>
  value === null ? noValue : words(value);

/** The reader's year and those beside it, one below the other: the short table that prints. */
export function besideTable(model: YearModel): TableData {
  const [side, mine] = [model.side.value, model.mine.value];
  const others = model.besides.value;
  const row = (which: Measure): readonly string[] => {
    const words = measureWords(model, which);
    const cells = [...(side === null ? [] : [side]), ...others].map((each) =>
      orDash(words.of(each), words.say),
    );
    return [rowNames[which], ...cells];
  };
  const ofOthers = (name: string, cell: (other: YearBeside) => string, first = '') => [
    name,
    first,
    ...others.map(cell),
  ];
  const saved = (other: YearBeside) => say(model, other.cost - (mine?.cost ?? 0));
  const worths = others.map((other) => model.worthBeside(other));
  const hasWorth = worths.some((worth) => worth !== null);
  const hasPresent = worths.some((worth) => worth?.present != null);
  return {
    caption: `The year ${model.number.value}, beside others`,
    columns: ['', 'Your year', ...others.map(({ kind }) => besideTitle(model, kind))],
    rows:
      mine === null
        ? []
        : [
            ...model.measures.value.map(row),
            [
              'Days a need is short',
              String(mine.shortDays),
              ...others.map(({ shortDays }) => orDash(shortDays, String)),
            ],
            ofOthers('You save in a year', saved),
            ...(hasWorth ? [['The pump is paid back in', '', ...worths.map(paybackText)]] : []),
            ...(hasPresent
              ? [
                  [
                    `Worth over ${years(worths[0]?.lifetime ?? 0)}, less its price`,
                    '',
                    ...worths.map((worth) =>
                      orDash(worth?.present ?? null, (value) => say(model, value)),
                    ),
                  ],
                ]
              : []),
          ],
  };
}

const rowNames: Readonly<Record<Measure, string>> = {
  money: 'Price',
  energy: 'Energy',
  water: 'Water moved',
  hours: 'Hours of running',
  gas: 'Greenhouse gas',
};

const paybackText = (worth: Worth | null): string =>
  worth === null ? noValue : worth.payback === null ? 'never' : years(worth.payback);

/** The months as a table, in the measure that the picture shows. */
export function monthTable(model: YearModel): TableData {
  const words = measureWords(model, model.measure.value);
  const [side, mine] = [model.side.value, model.mine.value];
  const others = model.besides.value;
  const all = side === null ? [] : [side, ...others];
  // One column, one number of places: cents only where no month comes to a hundred.
  const isSmall = all.every(({ months }) => months.every(({ cost }) => Math.abs(cost) < 100));
  const inColumn = (value: number) =>
    model.measure.value === 'money'
      ? formatMoney(value, model.currency.value, isSmall ? {} : { places: 0 })
      : words.say(value);
  const told = (amounts: Amounts | undefined) =>
    amounts === undefined ? noValue : orDash(words.of(amounts), inColumn);
  return {
    caption: `${words.name} in ${model.number.value}, month by month`,
    columns: [
      'Month',
      'Your year',
      ...others.map(({ kind }) => besideTitle(model, kind)),
      'Frost',
      'Days a need is short',
    ],
    rows:
      mine === null
        ? []
        : [
            ...mine.byMonth.map((month, index) => [
              monthNames[index] ?? '',
              ...all.map(({ months }) => told(months[index])),
              hourText(month.frostMinutes),
              String(month.shortDays),
            ]),
            [
              'The year',
              ...all.map((each) => told(each)),
              hourText(mine.frostMinutes),
              String(mine.shortDays),
            ],
          ],
  };
}
