import { useSyncExternalStore } from 'react';
import type { RecordDesk } from '../desk.ts';
import type { TracksState } from './desk-tracks.ts';

export function useTracks({ tracks }: RecordDesk): TracksState {
  return useSyncExternalStore(tracks.subscribe, tracks.state);
}
