'use client';

import { useState } from 'react';
import type { LabelProps } from 'recharts';
import {
  Area,
  CartesianGrid,
  ComposedChart,
  ErrorBar,
  Line,
  ReferenceArea,
  ReferenceLine,
  ResponsiveContainer,
  Scatter,
  usePlotArea,
  XAxis,
  YAxis,
} from 'recharts';
import { spreadLabels } from './spread-labels';

export interface ForecastChartProps {
  /** proportions times 100; one row a day of the curve */
  curve: {
    day: number;
    median?: number;
    band?: [number, number];
    alternative?: number;
    alternativeBand?: [number, number];
  }[];
  /** isMain: the one that the picture is about */
  tests: { day: number; percent: number; error: [number, number]; isMain?: boolean }[];
  threshold: number;
  thresholdLabel: string;
  todayDay: number;
  testDueDay: number | null;
  lastSafe: { day: number; label: string } | null;
  /** of the other curve */
  otherLastSafe?: { day: number; label: string } | null;
  /** what stands at the end of each curve */
  medianName?: string;
  alternativeName?: string;
  events: { fromDay: number; toDay: number; label: string }[];
  yearTicks: number[];
  label: string;
}

const yearOf = (day: number) => String(new Date(day * 86_400_000).getUTCFullYear());

/** The forecast as a picture: it draws what it is given and reckons nothing. The table below it has the same figures. */
export function ForecastChart(props: ForecastChartProps) {
  const { curve, tests, threshold, todayDay, testDueDay, lastSafe, otherLastSafe, events, yearTicks } = props;
  const { medianName = 'forecast, 9 in 10', alternativeName = 'what if' } = props;
  const from = curve[0]?.day ?? 0;
  const to = curve.at(-1)?.day ?? 1;
  const [width, setWidth] = useState(640);
  const isWide = width >= WIDE_ENOUGH_FOR_LABELS;
  const lastMedian = curve.findLast((row) => row.median !== undefined);
  const lastAlternative = curve.findLast((row) => row.alternative !== undefined);
  const ends: EndOfLine[] = [
    { day: to, percent: threshold, text: props.thresholdLabel, tone: 'var(--madder)' },
    ...(lastMedian
      ? [{ day: lastMedian.day, percent: lastMedian.median ?? 0, text: medianName, tone: 'var(--indigo)' }]
      : []),
    ...(lastAlternative
      ? [
          {
            day: lastAlternative.day,
            percent: lastAlternative.alternative ?? 0,
            text: alternativeName,
            tone: 'var(--leaf)',
          },
        ]
      : []),
  ];
  return (
    <figure role="img" aria-label={props.label} className="h-80 w-full select-none">
      <ResponsiveContainer
        width="100%"
        height="100%"
        initialDimension={{ width: 640, height: 320 }}
        onResize={(newWidth) => setWidth(newWidth)}
      >
        <ComposedChart
          data={curve}
          margin={{ top: 24, right: isWide ? ROOM_FOR_LABELS : 12, bottom: 4, left: 0 }}
          accessibilityLayer={false}
        >
          <CartesianGrid stroke="var(--grid)" />
          <XAxis
            dataKey="day"
            type="number"
            domain={[from, to]}
            ticks={yearTicks}
            tickFormatter={yearOf}
            interval="preserveStartEnd"
            minTickGap={24}
            stroke="var(--rule)"
            tick={FIGURES}
          />
          <YAxis domain={[0, 100]} ticks={[0, 25, 50, 75, 100]} width={36} stroke="var(--rule)" tick={FIGURES} />
          {events.map((event) => (
            <ReferenceArea
              key={`${event.fromDay} ${event.label}`}
              x1={Math.max(event.fromDay, from)}
              x2={Math.min(event.toDay, to)}
              fill="var(--ochre-soft)"
              fillOpacity={1}
              // Where there is no room, the words below the chart name it.
              label={
                isWide
                  ? { value: event.label, position: 'insideTopLeft', fill: 'var(--ochre)', fontSize: 12 }
                  : undefined
              }
            />
          ))}
          <Area
            dataKey="band"
            type="monotone"
            stroke="none"
            fill="var(--indigo-soft)"
            fillOpacity={1}
            isAnimationActive={false}
            activeDot={false}
          />
          {curve.some((row) => row.alternativeBand) && (
            <Area
              dataKey="alternativeBand"
              type="monotone"
              stroke="none"
              fill="var(--leaf-soft)"
              fillOpacity={0.7}
              isAnimationActive={false}
              activeDot={false}
            />
          )}
          <ReferenceLine
            y={threshold}
            stroke="var(--madder)"
            strokeWidth={1.5}
            strokeDasharray="6 4"
            label={
              isWide
                ? undefined
                : { value: props.thresholdLabel, position: 'insideBottomLeft', fill: 'var(--madder)', fontSize: 12 }
            }
          />
          <Line
            dataKey="median"
            type="monotone"
            stroke="var(--indigo)"
            strokeWidth={2.5}
            dot={false}
            activeDot={false}
            isAnimationActive={false}
          />
          <Line
            dataKey="alternative"
            type="monotone"
            stroke="var(--leaf)"
            strokeWidth={2.5}
            strokeDasharray="2 4"
            dot={false}
            activeDot={false}
            isAnimationActive={false}
          />
          <ReferenceLine
            x={todayDay}
            stroke="var(--ink)"
            label={{ value: 'today', position: 'top', fill: 'var(--ink)', fontSize: 12 }}
          />
          {testDueDay !== null && testDueDay > from && testDueDay < to && (
            <ReferenceLine
              x={testDueDay}
              stroke="var(--ochre)"
              strokeDasharray="2 3"
              label={<SeasonMark tone="var(--ochre)" text="test due" shape="diamond" />}
            />
          )}
          {lastSafe && lastSafe.day > from && lastSafe.day < to && (
            <ReferenceLine
              x={lastSafe.day}
              stroke="var(--leaf)"
              strokeDasharray="2 3"
              label={<SeasonMark tone="var(--leaf)" text={lastSafe.label} shape="triangle" />}
            />
          )}
          {otherLastSafe && otherLastSafe.day > from && otherLastSafe.day < to && (
            <ReferenceLine
              x={otherLastSafe.day}
              stroke="var(--leaf)"
              strokeDasharray="2 3"
              label={<SeasonMark tone="var(--leaf)" text={otherLastSafe.label} shape="diamond" />}
            />
          )}
          {isWide && <EndLabels ends={ends} from={from} to={to} />}
          <Scatter data={tests} dataKey="percent" isAnimationActive={false} shape={<TestPoint />}>
            <ErrorBar
              dataKey="error"
              direction="y"
              width={0}
              stroke="var(--ink)"
              strokeWidth={1.5}
              isAnimationActive={false}
            />
          </Scatter>
        </ComposedChart>
      </ResponsiveContainer>
    </figure>
  );
}

const WIDE_ENOUGH_FOR_LABELS = 560;
const ROOM_FOR_LABELS = 112;
/** pixels that a line of text of 12 px takes */
const LABEL_HEIGHT = 15;
const FIGURES = { fill: 'var(--ink-2)', fontSize: 12, fontFamily: 'var(--figure-face), monospace' } as const;

function TestPoint({ cx, cy, isMain }: { cx?: number; cy?: number; isMain?: boolean }) {
  const fill = isMain ? 'var(--ink)' : 'var(--sheet)';
  return <circle cx={cx} cy={cy} r={isMain ? 6 : 5} fill={fill} stroke="var(--ink)" strokeWidth={2} />;
}

interface EndOfLine {
  day: number;
  percent: number;
  text: string;
  tone: string;
}

/** The name of each line at its end; lines that end nearly alike have their names one below the other. */
function EndLabels({ ends, from, to }: { ends: readonly EndOfLine[]; from: number; to: number }) {
  const plot = usePlotArea();
  if (!plot) return null;
  const heights = ends.map(({ percent }) => plot.y + plot.height * (1 - percent / 100));
  const placed = spreadLabels(heights, { height: LABEL_HEIGHT, from: plot.y, to: plot.y + plot.height });
  return (
    <g>
      {ends.map(({ day, text, tone }, index) => (
        <text
          key={text}
          x={plot.x + (plot.width * (day - from)) / (to - from) + 6}
          y={placed[index]}
          dominantBaseline="central"
          fill={tone}
          fontSize={12}
        >
          {text}
        </text>
      ))}
    </g>
  );
}

interface SeasonMarkProps extends LabelProps {
  tone: string;
  text: string;
  shape: 'triangle' | 'diamond';
}

/** A mark at the foot of the chart: a shape and its words. */
function SeasonMark({ viewBox, tone, text, shape }: SeasonMarkProps) {
  const box = viewBox as { x?: number; y?: number; height?: number } | undefined;
  const x = box?.x ?? 0;
  const plot = usePlotArea();
  // In the right half words that begin at the mark would run out of the picture.
  const isRight = plot !== undefined && x > plot.x + plot.width / 2;
  const foot = (box?.y ?? 0) + (box?.height ?? 0);
  const rise = shape === 'diamond' ? 22 : 4;
  return (
    <g>
      <path
        d={shape === 'triangle' ? `M${x - 6} ${foot} l6 -10 l6 10 Z` : `M${x} ${foot - 28} l5 6 l-5 6 l-5 -6 Z`}
        fill={tone}
      />
      <text
        x={isRight ? x - 10 : x + 10}
        y={foot - rise + 4}
        textAnchor={isRight ? 'end' : 'start'}
        fill={tone}
        fontSize={12}
      >
        {text}
      </text>
    </g>
  );
}
