import type { PlayerState } from '@evenhand/media';
import { useSyncExternalStore } from 'react';
import type { DocumentState } from '../editor/study-document.ts';
import type { DeskState, RecordDesk } from './desk.ts';

export function useDesk(desk: RecordDesk): DeskState {
  return useSyncExternalStore(desk.subscribe, desk.state);
}

export function useDocument(desk: RecordDesk): DocumentState {
  return useSyncExternalStore(desk.document.subscribe, desk.document.state);
}

/** The boundary at which the desk stands; renders anew whenever it moves. */
export function usePlayhead(desk: RecordDesk): number {
  return useSyncExternalStore(desk.subscribe, () => desk.playhead);
}

/** What the player does; undefined without an open film. */
export function usePlayer(desk: RecordDesk): PlayerState | undefined {
  return useSyncExternalStore(desk.subscribe, () => desk.player?.state());
}
