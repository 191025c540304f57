// The extension under a host that is a stub: an editor of its kind cannot be had from the registry. What is real is the program it runs,
// which WATTLE names: a command line in JSON; without one those tests are skipped.
'use strict'
const assert = require('node:assert/strict')
const fs = require('node:fs')
const os = require('node:os')
const path = require('node:path')
const test = require('node:test')
const Module = require('node:module')

const ROOT = path.resolve(__dirname, '..')
const description = JSON.parse(fs.readFileSync(path.join(ROOT, 'package.json'), 'utf8'))
const wattle = process.env.WATTLE ? JSON.parse(process.env.WATTLE) : undefined

class Position { constructor(line, character) { Object.assign(this, { line, character }) } }
class Range { constructor(start, end) { Object.assign(this, { start, end }) } }

function host(settings = {}) {
  const state = { commands: {}, messages: [], shown: '', panels: [], saved: [], opened: [], clients: [] }
  state.vscode = {
    Position,
    Range,
    ViewColumn: { Beside: -2 },
    Uri: { parse: text => ({ text }) },
    commands: { registerCommand: (name, command) => { state.commands[name] = command; return { dispose() {} } } },
    env: { openExternal: uri => state.opened.push(uri.text) },
    workspace: {
      getConfiguration: () => ({ get: name => settings[name] ?? description.contributes.configuration.properties[`wattle.${name}`].default }),
      onDidChangeConfiguration: then => { state.configured = then; return { dispose() {} } },
      onDidSaveTextDocument: then => { state.saved.push(then); return { dispose() {} } },
    },
    window: {
      createOutputChannel: () => ({ clear: () => { state.shown = '' }, append: text => { state.shown += text }, show() {}, dispose() {} }),
      createWebviewPanel: () => {
        const panel = { webview: { html: '' }, onDidDispose: then => { panel.dispose = then } }
        state.panels.push(panel)
        return panel
      },
      showWarningMessage: text => state.messages.push(text),
      showErrorMessage: text => state.messages.push(text),
      showInputBox: async () => undefined,
    },
  }
  class LanguageClient {
    constructor(id, name, server, options) { Object.assign(this, { server, options, running: false }); state.clients.push(this) }
    async start() { this.running = true }
    async stop() { this.running = false }
  }
  const load = Module._load
  Module._load = (name, ...rest) => name === 'vscode' ? state.vscode
    : name === 'vscode-languageclient/node' ? { LanguageClient, TransportKind: { stdio: 0 } } : load(name, ...rest)
  try {
    delete require.cache[require.resolve('../src/extension.js')]
    state.extension = require('../src/extension.js')
  } finally {
    Module._load = load
  }
  state.context = { subscriptions: [] }
  return state
}

function document(file, text, line = 0, character = 0) {
  const lines = text.split('\n')
  const offset = p => lines.slice(0, p.line).reduce((sum, l) => sum + l.length + 1, 0) + p.character
  return {
    document: {
      languageId: 'wattle', isUntitled: false, isDirty: false, uri: { fsPath: file }, save: async () => true,
      lineAt: n => ({ text: lines[n] }),
      getText: range => range ? text.slice(offset(range.start), offset(range.end)) : text,
      getWordRangeAtPosition: (p, pattern) => {
        for (const m of lines[p.line].matchAll(new RegExp(pattern, 'g'))) {
          if (m.index <= p.character && p.character <= m.index + m[0].length) {
            return new Range(new Position(p.line, m.index), new Position(p.line, m.index + m[0].length))
          }
        }
        return undefined
      },
    },
    selection: { active: new Position(line, character) },
  }
}

test('every command of the description is there, and no other', async () => {
  const state = host()
  await state.extension.activate(state.context)
  assert.deepEqual(Object.keys(state.commands).sort(), description.contributes.commands.map(c => c.command).sort())
})

test('the server is started, again when its command changes, and stopped at the end', async () => {
  const state = host({ command: '/opt/a house/wattle' })
  await state.extension.activate(state.context)
  assert.deepEqual([state.clients[0].server.command, state.clients[0].server.args, state.clients[0].running],
    ['/opt/a house/wattle', ['language-server'], true])
  await state.configured({ affectsConfiguration: name => name === 'wattle.command' })
  assert.deepEqual(state.clients.map(c => c.running), [false, true])
  await state.extension.deactivate()
  assert.equal(state.clients[1].running, false)
})

test('files that the description names are there or made by the build', () => {
  for (const file of ['icon.png', 'language-configuration.json', 'snippets/wattle.json']) assert.ok(fs.existsSync(path.join(ROOT, file)), file)
  assert.ok(fs.existsSync(path.join(ROOT, '../wattle.tmLanguage.json')))
  JSON.parse(fs.readFileSync(path.join(ROOT, 'language-configuration.json'), 'utf8'))
  assert.deepEqual([...fs.readFileSync(path.join(ROOT, 'icon.png')).subarray(1, 4)].map(c => String.fromCharCode(c)).join(''), 'PNG')
})

test('the place at the cursor has its room', () => {
  const state = host()
  const text = 'room kitchen "Kitchen" {\n  c1: receptacle   c2: light\n}\nbranch counter by 12/2 NM-B { P --2 m-- kitchen.c1 }\n'
  const at = (line, character) => state.extension.placeAt(document('x', text).document, new Position(line, character))
  assert.equal(at(1, 3), 'kitchen.c1')
  assert.equal(at(1, 20), 'kitchen.c2')
  assert.equal(at(3, 42), 'kitchen.c1')
  assert.equal(at(0, 7), 'room kitchen')
  assert.equal(at(3, 9), 'branch counter')
})

test('without a plan in the editor nothing is run', async () => {
  const state = host()
  await state.extension.activate(state.context)
  await state.commands['wattle.check']()
  assert.match(state.messages[0], /open a plan first/)
})

test('a program that is not there is told with the setting', async () => {
  const state = host({ command: '/nowhere/wattle' })
  await state.extension.activate(state.context)
  state.vscode.window.activeTextEditor = document(path.join(os.tmpdir(), 'x.wattle'), 'plan "x"\n')
  await state.commands['wattle.check']()
  assert.match(state.messages[0], /wattle.command/)
})

test('snippets make a plan', { skip: wattle ? false : 'WATTLE names no program' }, async () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'wattle snippets '))
  const snippets = JSON.parse(fs.readFileSync(path.join(ROOT, 'snippets/wattle.json'), 'utf8'))
  const text = ['Plan', 'Service', 'Panel', 'Branch', 'Room'].map(n => snippets[n].body.join('\n').replace(/\$\{\d+:([^}]*)\}|\$0/g, (m, t) => t ?? '')).join('\n')
  const file = path.join(folder, 'house.wattle')
  fs.writeFileSync(file, text)
  const { run } = require('../src/program.js')
  const result = await run(wattle[0], [...wattle.slice(1), 'check', file])
  fs.rmSync(folder, { recursive: true })
  assert.equal(result.code, 0, result.out)
})

test('check, drawing, live page and lockout run the program', { skip: wattle ? false : 'WATTLE names no program' }, async () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'wattle & '))
  const program = path.join(folder, 'wattle')
  fs.writeFileSync(program, `#!/bin/sh\nexec ${wattle.map(w => `'${w}'`).join(' ')} "$@"\n`, { mode: 0o755 })
  const file = path.join(folder, 'a house.wattle')
  const text = fs.readFileSync(path.join(ROOT, '../../examples/cottage/house.wattle'), 'utf8')
  fs.writeFileSync(file, text)
  const state = host({ command: program })
  await state.extension.activate(state.context)
  const line = text.split('\n').findIndex(l => l.includes('branch bunk'))
  state.vscode.window.activeTextEditor = document(file, text, line, 8)
  await state.commands['wattle.check']()
  assert.match(state.shown, /licensed person decide/)
  await state.commands['wattle.lockoutHere']()
  assert.match(state.shown, /bunk/i)
  assert.match(state.shown, /F\/2|slot 2|way 2/i)
  await state.commands['wattle.drawBeside']()
  assert.match(state.panels[0].webview.html, /data:image\/svg\+xml;base64,/)
  assert.match(state.panels[0].webview.html, /default-src 'none'/)
  await state.commands['wattle.drawBeside']()
  assert.equal(state.panels.length, 1)
  await state.commands['wattle.livePage']()
  for (let i = 0; i < 300 && !state.opened.length; i++) await new Promise(done => setTimeout(done, 100))
  assert.match(state.opened[0] ?? '', /^http:\/\/(127\.0\.0\.1|localhost|\[::1\]):/)
  state.context.subscriptions.forEach(s => s.dispose())
  fs.rmSync(folder, { recursive: true, maxRetries: 10, retryDelay: 100 })
})
