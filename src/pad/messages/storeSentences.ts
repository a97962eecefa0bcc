/** What the reader is told of the pad as a whole: where it is kept, where it came from, what could not be done. */
export const notKept =
  'This browser does not keep the pad. Save it as a file before you leave this page.';
export const notKeptStep =
  'A change made while this page was still coming could not be kept. Please make it again.';
export const noRoom =
  'This browser did not keep your last changes: its storage is full or shut off. It is tried again ' +
  'with every change. Save the pad as a file before you leave this page.';
export const fromLink =
  'This pad came with the link and was opened beside yours. Your own pads are on the shelf under “Your pads”.';
export const joinedTabs = 'Changes that were made in another tab were put together with yours.';
export const keptBoth =
  'This pad was changed in another tab at the same time. Both are on the shelf under “Your pads”: ' +
  'you are in the one that was changed here.';
export const deletedElsewhere =
  'This pad was deleted in another tab. It still stands here; change anything and it is kept again.';
export const shelfIsFull =
  'This browser keeps 99 pads at most. Delete one you no longer need under “Your pads”, then try again.';
export const saveFirst =
  'The open pad has changes that this browser does not keep. Save it as a file, or delete a pad to ' +
  'make room, then open the other one.';
export const notFetched =
  'That could not be done, because a part of this page could not be fetched. Reload the page when ' +
  'there is a connection, then try again. Your present pad is unchanged.';
export const upgraded =
  'This pad was written by an older edition of the site and has been brought up to date.';

/** Something the reader should be told about the pad as a whole. */
export interface Notice {
  readonly kind: 'error' | 'note';
  readonly sentence: string;
}
