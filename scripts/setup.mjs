// Brings a checkout to the point where it can run: packages installed, program built.
// Uses Node alone. This first file is written so that an old Node can still read it and say what is wrong.
var version = process.versions.node.split('.');
var major = Number(version[0]);
var enough = major > 20 || (major === 20 && Number(version[1]) >= 19);
if (!enough) {
  console.error(
    'Evenhand needs Node 20.19 or newer; this is Node ' +
      process.versions.node +
      '.\nInstall a newer Node (https://nodejs.org) and run the same command again.',
  );
  process.exit(1);
} else {
  void import('./setup/ready.mjs').then((setup) => setup.main(process.argv.slice(2)));
}
