import type { JSX } from 'preact';
import { bandsOn } from '#dayPage/day/figures.ts';
import { rpmText, spanText } from '#dayPage/day/text.ts';
import { stripPieces } from '#ui/charts/ring.ts';
import { format, symbolFor } from '#units/format.ts';
import { formatPrice } from '#units/money.ts';
import { hardSpace } from '#units/numerals.ts';
import type { Looked, WhatIfModel } from './model.ts';

interface StripProps {
  readonly looked: Looked;
  readonly model: WhatIfModel;
}

const minutesInDay = 1440;
const hours = [0, 6, 12, 18, 24];
/** Room above the fastest block for its number. */
const headroom = 1.4;

const placeOf = (from: number, to: number) => `--from:${from.toFixed(5)};--to:${to.toFixed(5)}`;

/** How much there is room to write: less than 1½ h, less than 3 h, more. */
const sizeOf = (share: number) => (share < 0.0625 ? 'small' : share < 0.125 ? 'middle' : 'large');

/** The plan over the 24 hours, speeds as heights, prices below. */
export function PlanStrip({ looked, model }: StripProps): JSX.Element | null {
  const { day, changed } = looked;
  if (day?.kind !== 'found') return null;
  const units = model.units.value;
  const { reference } = changed.bench.speeds;
  const top = model.fastest.value * reference * headroom;
  const said = day.blocks.map(
    (block) => `${spanText(block)} ${rpmText(block.ratio * reference, units)}`,
  );
  return (
    <div class="what-if-strip">
      <p class="what-if-strip-title" aria-hidden="true">
        {`Speed, ${symbolFor(units, 'speed')}; below it the price of energy, ${model.currency.value.sign} per${hardSpace}kWh`}
      </p>
      <div
        class="what-if-blocks"
        role="img"
        aria-label={`Speeds over the day: ${said.length === 0 ? 'the pump stands still' : said.join('; ')}`}
      >
        {day.blocks.flatMap((block) =>
          stripPieces(block.start, block.end).map(({ from, to }) => (
            <span
              key={from}
              class="what-if-block"
              data-size={sizeOf(to - from)}
              style={`${placeOf(from, to)};--level:${Math.min(1, (block.ratio * reference) / top).toFixed(4)}`}
            >
              <b>
                {format('speed', block.ratio * reference, units, { places: 0, withUnit: false })}
              </b>
            </span>
          )),
        )}
      </div>
      <Prices looked={looked} model={model} />
      <div class="what-if-hours" aria-hidden="true">
        {hours.map((hour) => (
          <span key={hour} style={`--at:${hour / 24}`}>
            {String(hour).padStart(2, '0')}
          </span>
        ))}
      </div>
    </div>
  );
}

/** The prices of the day at that value, the higher the darker. */
function Prices({ looked, model }: StripProps): JSX.Element | null {
  const { tariff } = looked.changed.bench;
  if (tariff === null) return null;
  const bands = bandsOn(tariff, model.day.date.value);
  const currency = model.currency.value;
  const top = Math.max(...bands.map(({ price }) => price));
  const said = bands.map((band) => `${spanText(band)} ${formatPrice(band.price, currency)}`);
  return (
    <div
      class="what-if-prices"
      data-quantity="money"
      role="img"
      aria-label={`Prices: ${said.join('; ')}`}
    >
      {bands.map((band) => (
        <span
          key={band.start}
          data-size={sizeOf((band.end - band.start) / minutesInDay)}
          style={`${placeOf(band.start / minutesInDay, band.end / minutesInDay)};--dear:${(top > 0 ? Math.max(0, band.price) / top : 0).toFixed(3)}`}
        >
          {formatPrice(band.price, { ...currency, sign: '' }).replace(`per${hardSpace}kWh`, '')}
        </span>
      ))}
    </div>
  );
}
