// The bundle as it is packaged, with the client of the language server in it, loads under a host of which every part is there and does
// nothing. It is made by npm run build; where it is not, this is skipped.
'use strict'
const assert = require('node:assert/strict')
const fs = require('node:fs')
const path = require('node:path')
const test = require('node:test')
const Module = require('node:module')

const bundle = path.resolve(__dirname, '../dist/extension.js')

test('the bundle loads and needs nothing but its host', { skip: fs.existsSync(bundle) ? false : 'not built: npm run build' }, () => {
  const asked = new Set()
  const host = new Proxy({ version: '1.99.0' }, { get: (known, name) => known[name] ?? class {} })
  const load = Module._load
  Module._load = (name, parent, ...rest) => {
    if (parent?.filename === bundle) asked.add(name)
    return name === 'vscode' ? host : load(name, parent, ...rest)
  }
  try {
    const extension = require(bundle)
    assert.deepEqual([typeof extension.activate, typeof extension.deactivate], ['function', 'function'])
  } finally {
    Module._load = load
  }
  const foreign = [...asked].filter(name => name !== 'vscode' && !Module.isBuiltin(name))
  assert.deepEqual(foreign, [])
})
