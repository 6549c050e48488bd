import localFont from 'next/font/local'

export const sans = localFont({
  src: [
    { path: '../node_modules/@ibm/plex-sans/fonts/complete/woff2/IBMPlexSans-Regular.woff2', weight: '400' },
    { path: '../node_modules/@ibm/plex-sans/fonts/complete/woff2/IBMPlexSans-SemiBold.woff2', weight: '600' },
    { path: '../node_modules/@ibm/plex-sans/fonts/complete/woff2/IBMPlexSans-Bold.woff2', weight: '700' },
  ],
  variable: '--sans',
  display: 'swap',
})

export const mono = localFont({
  src: '../node_modules/@ibm/plex-mono/fonts/complete/woff2/IBMPlexMono-Regular.woff2',
  variable: '--mono',
  display: 'swap',
})
