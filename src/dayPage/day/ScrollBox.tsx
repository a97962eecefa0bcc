import type { ComponentChildren, JSX } from 'preact';

/** A wide table scrolls in its own box, which keys can reach. */
export function ScrollBox(props: { label: string; children: ComponentChildren }): JSX.Element {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it may scroll sideways, so keys must reach it
    <section class="scroll-box" tabIndex={0} aria-label={props.label}>
      {props.children}
    </section>
  );
}
