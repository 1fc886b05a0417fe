const loader = /@litertjs\/core\/wasm\/litert_wasm(?:_compat)?_internal\.js(?:\?|$)/;

/**
 * The loaders of LiteRT’s WebAssembly program are plain scripts that leave a global behind. As modules of a bundle they
 * need an export; then no script has to be fetched and run from text, and the page’s policy can forbid `eval`.
 * @returns {import('vite').Plugin}
 */
export function liteRtLoader() {
  return {
    name: 'litert-loader',
    transform(code, id) {
      if (!loader.test(id.replaceAll('\\', '/'))) return null;
      const [body] = code.split('// Export using a UMD style export');
      return { code: `${body}\nexport { ModuleFactory };\n`, map: null };
    },
  };
}
