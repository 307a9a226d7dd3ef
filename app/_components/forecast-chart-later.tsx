'use client';

import dynamic from 'next/dynamic';
import type { ForecastChartProps } from '@/app/_components/forecast-chart';

/** The chart's code is heavy: it arrives after the words and the table, in a place already kept for it. */
export const ForecastChartLater = dynamic<ForecastChartProps>(
  () => import('@/app/_components/forecast-chart').then((module) => module.ForecastChart),
  { ssr: false, loading: () => <div className="h-80 w-full" /> },
);
