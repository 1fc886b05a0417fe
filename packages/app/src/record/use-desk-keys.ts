import { keyMeaning } from '@evenhand/core/record';
import { useEffect } from 'react';
import type { RecordDesk } from './desk.ts';
import { chordOf, commandForChord, type DeskCommand } from './desk-commands.ts';
import { mark } from './desk-edits.ts';

/**
 * Listens to the keyboard for the whole desk. Fields keep their letters, buttons their space and Enter.
 * @param marking false on desks where nothing is marked: the marking keys do nothing there
 */
export function useDeskKeys(desk: RecordDesk, marking = true): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.isComposing || document.querySelector('dialog[open]') !== null)
        return;
      const target = event.target instanceof Element ? event.target : document.body;
      if (isField(target)) {
        if (event.code === 'Escape' && target instanceof HTMLElement) target.blur();
        return;
      }
      if (belongsTo(target, event)) return;
      if (runKey(desk, event, marking)) {
        event.preventDefault();
        event.stopPropagation();
      }
    };
    // Capture: a list that has the focus must not take the letters that mark.
    window.addEventListener('keydown', onKey, { capture: true });
    return () => window.removeEventListener('keydown', onKey, { capture: true });
  }, [desk, marking]);
}

function runKey(desk: RecordDesk, event: KeyboardEvent, marking: boolean): boolean {
  const plain = !event.ctrlKey && !event.metaKey && !event.altKey && !event.shiftKey;
  const meaning = plain ? keyMeaning(desk.preferences.value().keyMap, event.code) : undefined;
  if (meaning !== undefined && marking) {
    if (!event.repeat) mark(desk, meaning.hand, meaning.kind);
    return true;
  }
  const command = commandForChord(chordOf(event));
  if (command === undefined || (!marking && changesMarks(command))) return false;
  command.run(desk);
  return true;
}

/** Marking, cycles and proposals belong to the record desk; undo and moving about to every desk. */
function changesMarks({ group }: DeskCommand): boolean {
  return group === 'marks' || group === 'cycles' || group === 'proposals';
}

/** A key press that no field, no dialog and no other listener has a claim on. */
export function isFree(event: KeyboardEvent): boolean {
  if (event.defaultPrevented || event.isComposing || document.querySelector('dialog[open]') !== null)
    return false;
  return !(event.target instanceof Element && isField(event.target));
}

function isField(target: Element): boolean {
  if (target instanceof HTMLInputElement)
    return !['checkbox', 'radio', 'button', 'submit', 'range'].includes(target.type);
  return (
    target instanceof HTMLTextAreaElement ||
    target instanceof HTMLSelectElement ||
    (target instanceof HTMLElement && target.isContentEditable)
  );
}

/** Keys that a focused control needs for itself. */
function belongsTo(target: Element, event: KeyboardEvent): boolean {
  const pressable = target.closest('button, a, summary, label, input') !== null;
  const plain = !event.ctrlKey && !event.metaKey && !event.altKey;
  if (pressable && plain && (event.code === 'Space' || event.code === 'Enter')) return true;
  const range = target instanceof HTMLInputElement && (target.type === 'range' || target.type === 'radio');
  const moves = ['ArrowUp', 'ArrowDown', 'Home', 'End', 'PageUp', 'PageDown'].includes(event.code);
  if (range && (moves || event.code === 'ArrowLeft' || event.code === 'ArrowRight')) return true;
  return moves && !event.ctrlKey && !event.altKey && target.closest('[role=listbox], [data-arrows]') !== null;
}
