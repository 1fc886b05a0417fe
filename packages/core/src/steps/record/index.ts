export * from './commands/index.ts';
export {
  defaultKeyMap,
  type KeyCode,
  type KeyMap,
  keyFor,
  keyMeaning,
  mirroredKeys,
  mirrorKey,
  plainKeyLabel,
  readKeyMap,
  withKey,
} from './key-map.ts';
