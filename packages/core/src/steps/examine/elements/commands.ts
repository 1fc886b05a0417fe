import type { Edit } from '../../../ground/edit/index.ts';
import type { ElementMark, Hand, Method } from '../../../ground/study/index.ts';

/** Names the element that begins at a boundary. Undefined without a name, and where one of that hand begins already. */
export function markElement(
  method: Method,
  hand: Hand,
  at: number,
  name: string,
  newId: () => string,
): Edit | undefined {
  const text = name.trim();
  if (text === '' || at < 0 || isTaken(method, hand, at)) return undefined;
  return { type: 'element.add', method: method.id, element: { id: newId(), name: text, hand, at } };
}

/** Undefined without a name, and when it is called that already. */
export function renameElement(method: Method, id: string, name: string): Edit | undefined {
  const element = elementOf(method, id);
  const text = name.trim();
  if (element === undefined || text === '' || text === element.name) return undefined;
  return change(method, element, { name: text }, { name: element.name });
}

/** Lets an element begin elsewhere. Undefined where one of that hand begins already. */
export function moveElement(method: Method, id: string, at: number): Edit | undefined {
  const element = elementOf(method, id);
  if (element === undefined || at < 0 || isTaken(method, element.hand, at)) return undefined;
  return change(method, element, { at }, { at: element.at });
}

/** Takes a break point away; the element before it goes on. */
export function removeElement(method: Method, id: string): Edit | undefined {
  const element = elementOf(method, id);
  return element === undefined ? undefined : { type: 'element.remove', method: method.id, element };
}

type Fields = Partial<Pick<ElementMark, 'name' | 'at'>>;

function change(method: Method, { id }: ElementMark, to: Fields, was: Fields): Edit {
  return { type: 'element.change', method: method.id, element: id, to, was };
}

function elementOf(method: Method, id: string): ElementMark | undefined {
  return method.elements?.find((element) => element.id === id);
}

function isTaken(method: Method, hand: Hand, at: number): boolean {
  return method.elements?.some((element) => element.hand === hand && element.at === at) ?? false;
}
