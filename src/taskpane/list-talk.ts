/** What the pane and its reader of files say to each other: the reader works aside, where the pane can end it. */
import type { ColumnQuestion } from '../lists/read-runs';
import type { Answers, Reading } from './answered-list';

/** To the reader. */
export type Asked =
  | { readonly ask: 'open'; readonly bytes: Uint8Array; readonly fileName: string }
  | { readonly ask: 'read'; readonly answers: Answers };

/** From the reader. */
export type Answered =
  /** It has started. */
  | { readonly says: 'ready' }
  | { readonly says: 'opened'; readonly questions: readonly ColumnQuestion[] }
  /** The file cannot be read, as the sentence says. */
  | { readonly says: 'refused'; readonly sentence: string }
  | { readonly says: 'read'; readonly reading: Reading };
