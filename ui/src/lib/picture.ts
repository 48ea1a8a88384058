import type { LineView } from '../gen/LineView';
import type { PicturePoint } from '../gen/PicturePoint';
import { say, ui } from './words';

/** What became of an entry, in words. */
export function became({ corrected, late, retracted }: PicturePoint): string[] {
  return [corrected ? ui('ui-picture-corrected') : '', late ? ui('ui-late') : '', retracted ? ui('ui-taken-out') : ''].filter(Boolean);
}

/** An entry as it is read aloud. */
export function spoken(point: PicturePoint, line: LineView): string {
  const since = line.since_birth ? [ui('ui-after-birth', { time: line.since_birth })] : [];
  return [point.clock, ...since, say(line.message), ...became(point)].join(', ');
}

/** What the small signs mean that stand in the picture. */
export function signsOf(points: readonly PicturePoint[]): string {
  const signs = [
    points.some(({ corrected }) => corrected) ? ui('ui-picture-sign-corrected') : '',
    points.some(({ late }) => late) ? ui('ui-picture-sign-late') : '',
    points.some(({ retracted }) => retracted) ? ui('ui-picture-sign-out') : '',
  ];
  return signs.filter(Boolean).join(' ');
}
