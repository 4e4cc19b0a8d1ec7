/** The demonstration: a volunteer river-flood watch with a hilltop hut, a response van and carry-out radio cases. */
import demo from '../../../assets/river-flood-watch.json';
import type { StationContent } from './content';

export const DEMO: StationContent = demo;
