import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '@fontsource-variable/atkinson-hyperlegible-next/wght-italic.css';
import '@fontsource-variable/atkinson-hyperlegible-mono/wght.css';
import './globals.css';
import type { Metadata, Viewport } from 'next';
import { cookies } from 'next/headers';
import type { ReactNode } from 'react';

export const metadata: Metadata = {
  title: { template: '%s · Hilum', default: 'Hilum' },
  referrer: 'same-origin',
  appleWebApp: { capable: true, title: 'Hilum' },
};
export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  // The ground of globals.css: the bar above an installed app.
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#f5f3ec' },
    { media: '(prefers-color-scheme: dark)', color: '#14181a' },
  ],
};

export default async function RootLayout({ children }: { children: ReactNode }) {
  const theme = (await cookies()).get('theme')?.value;
  return (
    <html lang="en" data-theme={theme === 'light' || theme === 'dark' ? theme : undefined}>
      <body>{children}</body>
    </html>
  );
}
