// How a picture is read place by place: a pointer on it, or the slider under it, puts a rule on it, and the words of that place
// stand below and are read out.

import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import './drawing.css';
import type { Scale } from './scale.ts';

/** A place on the picture and what stands there, in words: what the arrows walk and a pointer shows. */
export interface Reading {
  readonly x: number;
  readonly words: string;
}

export interface ReaderProps {
  readonly title: string;
  readonly says: string;
  /** None where the picture is not read so. */
  readonly readings: readonly Reading[];
  readonly width: number;
  readonly height: number;
  readonly x: Scale;
  readonly top: number;
  readonly bottom: number;
  readonly children: ComponentChildren;
}

export function Reader({ title, says, readings, width, height, x, top, bottom, children }: ReaderProps) {
  const [at, setAt] = useState<number | undefined>(undefined);
  const reading = at === undefined ? undefined : readings[at];
  const last = readings.length - 1;
  const onPointerMove = (event: PointerEvent & { readonly currentTarget: SVGSVGElement }): void => {
    const box = event.currentTarget.getBoundingClientRect();
    setAt(nearest(readings, x.figure(event.clientX - box.left)));
  };
  return (
    <>
      <svg
        class="reader"
        viewBox={`0 0 ${width} ${height}`}
        width={width}
        height={height}
        role="img"
        aria-label={`${title}. ${says}`}
        onPointerMove={onPointerMove}
        onPointerLeave={() => setAt(undefined)}
      >
        {children}
        {reading === undefined ? null : (
          <line class="reader-rule" x1={x.at(reading.x)} x2={x.at(reading.x)} y1={top} y2={bottom} />
        )}
      </svg>
      {readings.length < 2 ? null : (
        <input
          class="reader-slider"
          type="range"
          min={0}
          max={last}
          value={at ?? 0}
          aria-label={`Read the picture: ${title}`}
          aria-valuetext={reading?.words ?? says}
          style={{ marginLeft: `${x.at(x.from)}px`, width: `${x.at(x.to) - x.at(x.from)}px` }}
          onInput={({ currentTarget }) => setAt(Number(currentTarget.value))}
        />
      )}
      {readings.length === 0 ? null : <p class="reader-words">{reading?.words ?? ''}</p>}
    </>
  );
}

function nearest(readings: readonly Reading[], figure: number): number | undefined {
  if (readings.length === 0) return undefined;
  let best = 0;
  readings.forEach(({ x }, index) => {
    if (Math.abs(x - figure) < Math.abs((readings[best]?.x ?? x) - figure)) best = index;
  });
  return best;
}
