// Bundles the extension with its client of the language server, so that it needs nothing from a network, and puts the colors beside it.
import { copyFileSync, existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs'
import { build } from 'esbuild'

mkdirSync('syntaxes', { recursive: true })
copyFileSync('../wattle.tmLanguage.json', 'syntaxes/wattle.tmLanguage.json')
copyFileSync('../../LICENSE', 'LICENSE')
const built = await build({
  entryPoints: ['src/extension.js'],
  outfile: 'dist/extension.js',
  bundle: true,
  platform: 'node',
  format: 'cjs',
  target: 'node18',
  external: ['vscode'],
  legalComments: 'none',
  metafile: true,
})

// The license of each package that is bundled; one without a text ends the build.
const bundled = new Set(Object.keys(built.metafile.inputs)
  .map(file => /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(file)?.[1]).filter(folder => folder))
let licenses = ''
for (const folder of [...bundled].sort()) {
  const { name, version } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'))
  const file = readdirSync(folder).find(f => /^licen[cs]e/i.test(f))
  if (!file || !existsSync(`${folder}/${file}`)) throw new Error(`${name} has no license beside it`)
  licenses += `${name} ${version}\n\n${readFileSync(`${folder}/${file}`, 'utf8').trim()}\n\n----\n\n`
}
writeFileSync('dist/THIRD-PARTY-LICENSES.txt', licenses)
