/** The service worker that keeps the page for use without network, and what makes it an app to install. */
import type { PluginOption } from "vite";
import { VitePWA } from "vite-plugin-pwa";

/** `isWanted: false` leaves the page's own calls in place and answers them with nothing. */
export function offline({ isWanted }: { readonly isWanted: boolean }): PluginOption {
  return VitePWA({
    disable: !isWanted,
    // A new version waits until the user takes it (src/ui/features/offline/newVersion.ts).
    registerType: "prompt",
    injectRegister: null,
    manifest: {
      name: "Downlead",
      short_name: "Downlead",
      description: "Draw a TV, radio and satellite reception system and see what is on every wire.",
      lang: "en",
      display: "standalone",
      start_url: ".",
      scope: ".",
      // The light theme's surface and canvas of src/ui/kit/theme.css: a manifest knows one colour each.
      theme_color: "#fdfcf9",
      background_color: "#f3f1eb",
      icons: [
        { src: "icon.svg", sizes: "any", type: "image/svg+xml" },
        { src: "icon-192.png", sizes: "192x192", type: "image/png" },
        { src: "icon-512.png", sizes: "512x512", type: "image/png" },
        { src: "icon-maskable-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
      ],
    },
    workbox: {
      globPatterns: ["**/*.{html,js,css,svg,png,woff2}"],
      // The layout library's worker alone has 1.6 MB.
      maximumFileSizeToCacheInBytes: 4_000_000,
      // Also for the page that was there first: what it has yet to fetch comes from the storage.
      clientsClaim: true,
      inlineWorkboxRuntime: true,
      cleanupOutdatedCaches: true,
    },
  });
}
