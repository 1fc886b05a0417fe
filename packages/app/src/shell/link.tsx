import type { ReactNode } from 'react';
import { goTo, type Route, routePath } from './route.ts';

/** A link inside the app: an ordinary address that opens without loading the page anew. */
export function Link(props: {
  readonly to: Route;
  readonly children: ReactNode;
  readonly current?: boolean;
  readonly className?: string;
}) {
  return (
    <a
      href={routePath(props.to)}
      className={props.className}
      aria-current={props.current === true ? 'page' : undefined}
      onClick={(event) => {
        if (event.ctrlKey || event.metaKey || event.shiftKey || event.button !== 0) return;
        event.preventDefault();
        goTo(props.to);
      }}
    >
      {props.children}
    </a>
  );
}
