import type { PathStep } from '../gen/PathStep';
import type { Place } from '../gen/Place';
import type { Sketch } from '../gen/Sketch';

/** Farthest that a point can lie from the middle, thousandths of half the disc; the core refuses more. */
const FARTHEST = 3000;

export interface Spot {
  x: number;
  y: number;
}

/** An outline as SVG writes it. */
export function path(steps: PathStep[]): string {
  return steps
    .map((step) => {
      if (step.to === 'move') return `M${step.x} ${step.y}`;
      if (step.to === 'line') return `L${step.x} ${step.y}`;
      if (step.to === 'curve') return `C${step.x1} ${step.y1} ${step.x2} ${step.y2} ${step.x} ${step.y}`;
      return 'Z';
    })
    .join('');
}

/** Where a touch lies on the disc; `maternal` tells that left and right are changed on that side. */
export function placeAt({ x, y }: Spot, sketch: Sketch, maternal: boolean): Pick<Place, 'x' | 'y'> {
  const share = (mm: number, half: number): number => Math.max(-FARTHEST, Math.min(FARTHEST, Math.round((mm / half) * 1000))) + 0;
  return { x: share(maternal ? -x : x, sketch.half_length), y: share(y, sketch.half_breadth) };
}

/** Where a point is drawn, mm. */
export function spotOf(place: Place, sketch: Sketch, maternal: boolean): Spot {
  const x = (place.x / 1000) * sketch.half_length;
  return { x: maternal ? -x : x, y: (place.y / 1000) * sketch.half_breadth };
}
