/** A list that is being taken in: what is asked of its columns, and what is made of it by the answers. */
import type { ColumnQuestion, RunsReport } from '../lists/read-runs';

/** What each column is, by its heading; an empty answer leaves it out. */
export type Answers = readonly (readonly [heading: string, answer: string])[];

/** The list as the answers have it; without one, why they cannot be had. */
export interface Reading {
  readonly report?: RunsReport;
  readonly refusal: string;
}

export interface AnsweredList {
  readonly questions: readonly ColumnQuestion[];
  read(answers: Answers): Reading;
}

/** What a question is answered with before a person has. */
export function firstAnswers(questions: readonly ColumnQuestion[]): Answers {
  return questions.map(({ heading, suggested = '' }) => [heading, suggested]);
}

/** Opens a file; rejects where no list is to be found in it, with the sentence that says so. */
export async function openList(bytes: Uint8Array, fileName: string): Promise<AnsweredList> {
  // The reader and the library behind it are only loaded when a file is chosen.
  const { openRuns, readColumnMap, UnreadHeadings, UnreadableFile, UnusableMap } =
    await import('../lists/read-runs');
  const file = await openRuns(bytes, fileName);
  const asked = (): readonly ColumnQuestion[] => {
    try {
      return file.read().questions;
    } catch (fault) {
      if (fault instanceof UnreadHeadings && fault.questions.length > 0) return fault.questions;
      throw fault;
    }
  };
  return {
    questions: asked(),
    read(answers) {
      try {
        const given = answers.filter(([, answer]) => answer !== '');
        return { report: file.read(readColumnMap(given)), refusal: '' };
      } catch (fault) {
        if (fault instanceof UnreadableFile || fault instanceof UnusableMap) {
          return { refusal: fault.message };
        }
        throw fault;
      }
    },
  };
}
