/** Files that the bundler copies into the build; the import is their address. */
declare module '*?url' {
  const address: string;
  // biome-ignore lint/style/noDefaultExport: so the bundler gives it
  export default address;
}

/** The loaders of the WebAssembly program; the bundler adds the export (scripts/vite/litert-loader.ts). */
declare module '@litertjs/core/wasm/litert_wasm_internal.js' {
  export const ModuleFactory: (settings: object) => Promise<object>;
}
declare module '@litertjs/core/wasm/litert_wasm_compat_internal.js' {
  export const ModuleFactory: (settings: object) => Promise<object>;
}
