// The extension: starts the language server, and has a command for what an editor cannot show by itself.
'use strict'
const path = require('node:path')
const vscode = require('vscode')
const { LanguageClient, TransportKind } = require('vscode-languageclient/node')
const { run, started } = require('./program')

let client
let output
const pages = new Map()

function setting(name) {
  return vscode.workspace.getConfiguration('wattle').get(name)
}

function program() {
  return setting('command') || 'wattle'
}

/** The plan in the editor, saved, since commands read the file. */
async function plan() {
  const editor = vscode.window.activeTextEditor
  if (!editor || editor.document.languageId !== 'wattle') {
    vscode.window.showWarningMessage('Wattle: open a plan first.')
    return undefined
  }
  if (editor.document.isUntitled || editor.document.isDirty && !await editor.document.save()) {
    vscode.window.showWarningMessage('Wattle: save the plan first.')
    return undefined
  }
  return { file: editor.document.uri.fsPath, editor }
}

async function ran(args, file) {
  try {
    return await run(program(), args, { cwd: path.dirname(file) })
  } catch (problem) {
    vscode.window.showErrorMessage(`Wattle: ${problem.message}`)
    return undefined
  }
}

function show(text) {
  output.clear()
  output.append(text)
  output.show(true)
}

async function check() {
  const open = await plan()
  if (!open) return
  const code = setting('code')
  const result = await ran(['check', ...(code ? ['--code', code] : []), open.file], open.file)
  if (result) show(result.out + result.err)
}

/** A picture in a page that runs no script and reads nothing from outside. */
function page(svg) {
  return '<!DOCTYPE html><html><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy"'
    + ' content="default-src \'none\'; img-src data:; style-src \'unsafe-inline\'"><style>body { background: white }'
    + ' img { max-width: 100% }</style></head><body><img alt="Drawing of the plan" src="data:image/svg+xml;base64,'
    + Buffer.from(svg, 'utf8').toString('base64') + '"></body></html>'
}

async function drawBeside() {
  const open = await plan()
  if (!open) return
  const result = await ran(['draw', '--view', setting('view') || 'one-line', open.file], open.file)
  if (!result) return
  if (!result.out.includes('<svg')) {
    show(result.out + result.err)
    return
  }
  let panel = pages.get(open.file)
  if (!panel) {
    panel = vscode.window.createWebviewPanel('wattle.drawing', `${path.basename(open.file)} drawn`,
      { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true }, { enableScripts: false })
    pages.set(open.file, panel)
    const again = vscode.workspace.onDidSaveTextDocument(async saved => {
      if (saved.uri.fsPath !== open.file) return
      const next = await ran(['draw', '--view', setting('view') || 'one-line', open.file], open.file)
      if (next && next.out.includes('<svg')) panel.webview.html = page(next.out)
    })
    panel.onDidDispose(() => {
      pages.delete(open.file)
      again.dispose()
    })
  }
  panel.webview.html = page(result.out)
}

async function livePage(context) {
  const open = await plan()
  if (!open) return
  const child = started(program(), ['live', '--until-closed', '60', open.file], { cwd: path.dirname(open.file) })
  context.subscriptions.push({ dispose: () => child.kill() })
  let said = ''
  let told = false
  child.on('error', problem => vscode.window.showErrorMessage(`Wattle: ${program()} cannot be started (${problem.message})`))
  child.stderr.on('data', part => output.append(part.toString('utf8')))
  child.stdout.on('data', part => {
    said += part.toString('utf8')
    const address = /^(http:\/\/\S+)\r?\n/m.exec(said)
    if (address && !told) {
      told = true
      vscode.env.openExternal(vscode.Uri.parse(address[1]))
    }
  })
}

/** The name at the cursor, with the room in front where it stands in the block of one. */
function placeAt(document, position) {
  const range = document.getWordRangeAtPosition(position, /[A-Za-z][A-Za-z0-9-]*(?:\.[A-Za-z][A-Za-z0-9-]*)*/)
  const word = range ? document.getText(range) : ''
  if (!word || word.includes('.')) return word
  const line = document.lineAt(position.line).text
  const named = new RegExp(`\\b(room|panel|branch)\\s+${word}\\b`).exec(line)
  if (named) return `${named[1]} ${word}`
  const before = document.getText(new vscode.Range(new vscode.Position(0, 0), position))
  let depth = 0
  for (let i = before.length - 1; i >= 0; i--) {
    if (before[i] === '}') depth++
    if (before[i] === '{' && depth-- === 0) {
      const room = /\broom\s+([A-Za-z][A-Za-z0-9-]*)[^{}]*$/.exec(before.slice(0, i))
      return room && new RegExp(`\\b${word}\\s*:`).test(line) ? `${room[1]}.${word}` : word
    }
  }
  return word
}

async function lockoutHere() {
  const open = await plan()
  if (!open) return
  const place = placeAt(open.editor.document, open.editor.selection.active)
  const asked = place || await vscode.window.showInputBox({ prompt: 'A box, device, room, branch or panel', placeHolder: 'kitchen.c1' })
  if (!asked) return
  const result = await ran(['lockout', open.file, ...asked.split(' ')], open.file)
  if (result) show(result.out + result.err)
}

async function start() {
  client = new LanguageClient('wattle', 'Wattle',
    { command: program(), args: ['language-server'], transport: TransportKind.stdio, options: {} },
    { documentSelector: [{ scheme: 'file', language: 'wattle' }, { scheme: 'untitled', language: 'wattle' }] })
  try {
    await client.start()
  } catch (problem) {
    client = undefined
    vscode.window.showErrorMessage(`Wattle: ${program()} cannot be started (${problem.message}); set wattle.command to where it is`)
  }
}

async function stop() {
  const running = client
  client = undefined
  if (running) await running.stop()
}

async function restart() {
  await stop()
  await start()
}

async function activate(context) {
  output = vscode.window.createOutputChannel('Wattle')
  const commands = { check, drawBeside, livePage: () => livePage(context), lockoutHere, restart }
  context.subscriptions.push(output,
    ...Object.entries(commands).map(([name, command]) => vscode.commands.registerCommand(`wattle.${name}`, command)),
    vscode.workspace.onDidChangeConfiguration(change => change.affectsConfiguration('wattle.command') ? restart() : undefined))
  await start()
}

module.exports = { activate, deactivate: stop, placeAt }
