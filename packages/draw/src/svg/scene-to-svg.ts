import type { Fill, GroupNode, Scene, SceneNode, Stroke, TextNode } from '@evenhand/core/ground/scene';
import type { Pattern } from '@evenhand/core/ground/tables';
import { cleanText } from '../clean-text.ts';
import { colourOf, type Look, looks } from '../looks.ts';
import { patternInk, patternTiles } from '../patterns.ts';

/** A font to be carried inside the drawing. */
export interface EmbeddedFont {
  readonly weight: 400 | 600;
  /** The WOFF2 file in base64. */
  readonly woff2: string;
  /** Characters it holds, as in CSS `unicode-range`; left out, all. */
  readonly unicodeRange?: string | undefined;
}

export interface SvgOptions {
  /** Inks; print when left out. */
  readonly look?: Look | undefined;
  /** Fonts to carry inside, so that the drawing looks the same everywhere. */
  readonly fonts?: readonly EmbeddedFont[] | undefined;
  /** What a unit of the scene is: points on a sheet (the usual) or pixels on a screen. */
  readonly unit?: 'pt' | 'px' | undefined;
  /** Begins every id in the drawing, so that several can stand in one page. */
  readonly idPrefix?: string | undefined;
  /** Whether the sheet itself is painted; it is when left out. */
  readonly background?: boolean | undefined;
}

/** A scene as one standalone SVG file. The same scene and options give the same bytes. */
export function sceneToSvg(scene: Scene, options: SvgOptions = {}): string {
  const { look = looks.print, unit = 'pt', idPrefix = 'drawing', background = true } = options;
  const painter = new SvgPainter(look, idPrefix);
  const body = scene.nodes.map((node) => painter.node(node)).join('');
  const size = `${number(scene.width)} ${number(scene.height)}`;
  const paper = background
    ? `<rect width="${number(scene.width)}" height="${number(scene.height)}" fill="${look.inks.paper}"/>`
    : '';
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${number(scene.width)}${unit}" height="${number(scene.height)}${unit}"`,
    ` viewBox="0 0 ${size}" role="graphics-document" lang="en" aria-labelledby="${idPrefix}-title"`,
    ` aria-describedby="${idPrefix}-description">`,
    `<title id="${idPrefix}-title">${escapeText(scene.title)}</title>`,
    `<desc id="${idPrefix}-description">${escapeText(scene.description)}</desc>`,
    fontStyle(options.fonts ?? []),
    painter.definitions(),
    `<g font-family="${escapeAttribute(look.fontFamily)}" stroke-linejoin="round">${paper}${body}</g>`,
    '</svg>\n',
  ].join('');
}

class SvgPainter {
  private readonly look: Look;
  private readonly prefix: string;
  /** Patterns in use, by id. */
  private readonly patterns = new Map<string, string>();

  constructor(look: Look, prefix: string) {
    this.look = look;
    this.prefix = prefix;
  }

  definitions(): string {
    const ids = [...this.patterns.keys()].sort();
    return ids.length === 0 ? '' : `<defs>${ids.map((id) => this.patterns.get(id)).join('')}</defs>`;
  }

  node(node: SceneNode): string {
    switch (node.kind) {
      case 'rect': {
        const round = node.radius === undefined ? '' : ` rx="${number(node.radius)}"`;
        const box = `x="${number(node.x)}" y="${number(node.y)}" width="${number(node.width)}" height="${number(node.height)}"`;
        return this.shape(`rect ${box}${round}`, node.fill, node.stroke);
      }
      case 'line': {
        const ends = `x1="${number(node.x1)}" y1="${number(node.y1)}" x2="${number(node.x2)}" y2="${number(node.y2)}"`;
        return `<line ${ends}${this.stroke(node.stroke)}/>`;
      }
      case 'path':
        return this.shape(`path d="${escapeAttribute(node.d)}"`, node.fill, node.stroke);
      case 'text':
        return this.text(node);
      case 'group':
        return `<g${groupRole(node)}>${node.nodes.map((child) => this.node(child)).join('')}</g>`;
    }
  }

  /** A filled shape; a pattern is the same shape once more, over the fill and under the line. */
  private shape(element: string, fill: Fill | undefined, stroke: Stroke | undefined): string {
    const pattern = this.pattern(fill);
    if (pattern === undefined) return `<${element}${this.fill(fill)}${this.stroke(stroke)}/>`;
    const over = `<${element} fill="url(#${pattern})"${opacity(fill)}${this.stroke(stroke)}/>`;
    return `<${element}${this.fill(fill)}/>${over}`;
  }

  private text(node: TextNode): string {
    const anchor = node.align === 'start' ? '' : ` text-anchor="${node.align}"`;
    const weight = node.weight === 400 ? '' : ` font-weight="${node.weight}"`;
    const style = node.italic ? ' font-style="italic"' : '';
    const place = `x="${number(node.x)}" y="${number(node.y)}" font-size="${number(node.size)}"`;
    const fill = ` fill="${escapeAttribute(colourOf(node.ink, this.look))}"`;
    return `<text ${place}${anchor}${weight}${style}${fill}>${escapeText(node.text)}</text>`;
  }

  private fill(fill: Fill | undefined): string {
    if (fill === undefined) return ' fill="none"';
    return ` fill="${escapeAttribute(colourOf(fill.ink, this.look))}"${opacity(fill)}`;
  }

  private stroke(stroke: Stroke | undefined): string {
    if (stroke === undefined) return '';
    const dash = stroke.dash === undefined ? '' : ` stroke-dasharray="${stroke.dash.map(number).join(' ')}"`;
    const colour = escapeAttribute(colourOf(stroke.ink, this.look));
    return ` stroke="${colour}" stroke-width="${number(stroke.width)}"${dash}`;
  }

  private pattern(fill: Fill | undefined): string | undefined {
    if (fill?.pattern === undefined || patternTiles[fill.pattern] === undefined) return undefined;
    const ink = patternInk(colourOf(fill.ink, this.look));
    const id = `${this.prefix}-${fill.pattern}-${ink === '#ffffff' ? 'light' : 'dark'}`;
    if (!this.patterns.has(id)) this.patterns.set(id, patternElement(id, fill.pattern, ink));
    return id;
  }
}

function patternElement(id: string, pattern: Pattern, ink: string): string {
  const tile = patternTiles[pattern];
  if (tile === undefined) return '';
  const marks = tile.marks.map(({ d, line }) =>
    line === 0
      ? `<path d="${d}" fill="${ink}"/>`
      : `<path d="${d}" fill="none" stroke="${ink}" stroke-width="${number(line)}"/>`,
  );
  const size = `width="${number(tile.width)}" height="${number(tile.height)}"`;
  return `<pattern id="${id}" ${size} patternUnits="userSpaceOnUse">${marks.join('')}</pattern>`;
}

const groupRoles: Readonly<Record<GroupNode['role'], string>> = {
  heading: 'heading',
  table: 'table',
  'head-row': 'row',
  row: 'row',
  cell: 'cell',
  figure: 'figure',
  note: 'note',
  layer: '',
};

function groupRole(node: GroupNode): string {
  if (node.role === 'layer') return ' aria-hidden="true"';
  const label = node.label === undefined ? '' : ` aria-label="${escapeAttribute(node.label)}"`;
  const level = node.role === 'heading' ? ` aria-level="${node.level ?? 1}"` : '';
  return ` role="${groupRoles[node.role]}"${level}${label}`;
}

function opacity(fill: Fill | undefined): string {
  return fill?.opacity === undefined ? '' : ` fill-opacity="${number(fill.opacity)}"`;
}

function fontStyle(fonts: readonly EmbeddedFont[]): string {
  if (fonts.length === 0) return '';
  const faces = fonts.map(({ weight, woff2, unicodeRange }) => {
    const range = unicodeRange === undefined ? '' : `unicode-range:${unicodeRange};`;
    return `@font-face{font-family:'IBM Plex Sans';font-weight:${weight};${range}src:url(data:font/woff2;base64,${woff2}) format('woff2')}`;
  });
  return `<style>${faces.join('')}</style>`;
}

/** Four decimals: a ten-thousandth of a point is far below what any printer resolves. */
function number(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a drawing must have finite measures, got ${value}`);
  const text = value.toFixed(4).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

/** XML's own signs as entities, and what XML forbids left out. */
function escapeText(text: string): string {
  return cleanText(text).replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
}

function escapeAttribute(text: string): string {
  return escapeText(text).replace(/"/g, '&quot;');
}
