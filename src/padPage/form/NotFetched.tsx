import type { JSX } from 'preact';

/** Stands where a part of the page should be that did not come. */
export function NotFetched(): JSX.Element {
  return (
    <p class="field-error">
      This part of the page could not be fetched. Reload the page when there is a connection.
    </p>
  );
}
