// Brings a checkout to the point where it can run: packages installed, program built.
// Uses Node alone. This first file is written so that an old Node can still read it and say what is wrong.
import process from 'process';

var version = process.versions.node.split('.').map(Number);
var enough = version[0] > 20 || (version[0] === 20 && version[1] >= 19);
if (!enough) {
  console.error(
    'Evenhand needs Node 20.19 or newer; this is Node ' +
      process.versions.node +
      '.\nInstall a newer Node (https://nodejs.org) and run the same command again.',
  );
  process.exit(1);
} else {
  import('./setup/ready.mjs').then((setup) => setup.main(process.argv.slice(2)));
}
