import type { JSX } from 'preact';
import { type Live, read } from './live.ts';
import type { Quantity } from './marks.tsx';

/** One share of a whole. */
export interface Share {
  readonly id: string;
  readonly label: string;
  /** Any measure of the same kind as the others; 0 or more. */
  readonly amount: number;
  /** The amount as the reader sees it, with its unit. */
  readonly shown: string;
}

interface ShareBarProps {
  readonly shares: Live<readonly Share[]>;
  readonly of: Quantity;
  /** Spoken name of the picture. */
  readonly title: string;
}

/** Shares of the whole in their order, each 0 to 1; all 0 when there is no whole. */
export function portions(shares: readonly Share[]): number[] {
  const whole = shares.reduce((sum, share) => sum + share.amount, 0);
  return shares.map((share) => (whole > 0 ? share.amount / whole : 0));
}

/** A bar cut into shares, and under it a key with every share's name and number. */
export function ShareBar({ shares, of, title }: ShareBarProps): JSX.Element {
  const all = read(shares);
  const parts = portions(all);
  return (
    <div class="share" data-quantity={of}>
      <div class="share-bar" role="img" aria-label={title}>
        {all.map((share, index) => (
          <span
            key={share.id}
            class="share-piece"
            data-step={index % 4}
            style={`width:${((parts[index] ?? 0) * 100).toFixed(2)}%`}
          >
            {(parts[index] ?? 0) > 0.07 ? index + 1 : ''}
          </span>
        ))}
      </div>
      <ol class="share-key">
        {all.map((share, index) => (
          <li key={share.id}>
            <span class="share-name">{share.label}</span>
            <span class="share-amount">{share.shown}</span>
            <span class="share-part">{Math.round((parts[index] ?? 0) * 100)} %</span>
          </li>
        ))}
      </ol>
    </div>
  );
}
