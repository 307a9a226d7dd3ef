import type { NextConfig } from 'next';

const config: NextConfig = {
  output: 'standalone',
  // Lets two development servers work side by side, each with its own folder.
  distDir: process.env.NEXT_DIST_DIR || '.next',
  outputFileTracingRoot: import.meta.dirname,
  turbopack: { root: import.meta.dirname },
  poweredByHeader: false,
  // Read by path when labels are printed: nothing imports them.
  outputFileTracingIncludes: { '/api/labels': ['./lib/server/labels/fonts/*.ttf'] },
  // A steward's spreadsheet of 20,000 rows is a few megabytes; the import itself refuses more than 25.
  experimental: { serverActions: { bodySizeLimit: '30mb' }, authInterrupts: true },
};

export default config;
