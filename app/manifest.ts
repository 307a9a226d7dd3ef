import type { MetadataRoute } from 'next';

/**
 * What a phone needs to put Hilum on its home screen; it opens at the bench. Colours are ground and leaf of globals.css.
 * The pictures are drawn from app/icon.svg; the maskable one and apple-icon.png without its rounded corners, since phones
 * cut their own.
 */
export default function manifest(): MetadataRoute.Manifest {
  return {
    id: '/',
    name: 'Hilum',
    short_name: 'Hilum',
    description: 'Keeps a seed collection alive.',
    start_url: '/bench',
    scope: '/',
    display: 'standalone',
    background_color: '#f5f3ec',
    theme_color: '#22664a',
    icons: [
      { src: '/icons/hilum-192.png', sizes: '192x192', type: 'image/png' },
      { src: '/icons/hilum-512.png', sizes: '512x512', type: 'image/png' },
      { src: '/icons/hilum-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    ],
  };
}
