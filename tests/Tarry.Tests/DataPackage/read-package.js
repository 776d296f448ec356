// Validates a data package against the published profiles and reads every row of its tables by their schemas.
// Usage: node read-package.js FOLDER_WITH_NODE_MODULES datapackage.json
const {createRequire} = require('module');
const {Package} = createRequire(process.argv[2] + '/')('datapackage');
(async () => {
  const opened = await Package.load(process.argv[3], {strict: true});
  for (const resource of opened.resources.filter(resource => resource.tabular)) {
    const rows = await resource.read({keyed: true});
    console.log(`${resource.name} ${rows.length}`);
  }
})().catch(error => { console.error(String(error), (error.errors || []).slice(0, 5).map(String).join('\n')); process.exit(1); });
