// A client of the language server that shares no code with it: opens the example, breaks it, sees the finding, applies the
// fix, and leaves. Arguments: the folder of the example, then the command that starts the server.
import { spawn } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import rpc from 'vscode-jsonrpc/node.js'
import protocol from 'vscode-languageserver-protocol'

const patience = 60_000
const [folder, command, ...rest] = process.argv.slice(2)
const file = join(resolve(folder), 'house.wattle')
const uri = pathToFileURL(file).href
let text = readFileSync(file, 'utf8')
let version = 1

const server = spawn(command, rest, { stdio: ['pipe', 'pipe', 'inherit'] })
const exited = new Promise(done => server.on('exit', done))
const connection = rpc.createMessageConnection(
  new rpc.StreamMessageReader(server.stdout), new rpc.StreamMessageWriter(server.stdin))

const waiting = []
connection.onNotification(protocol.PublishDiagnosticsNotification.type, told => {
  for (const wait of waiting) wait(told)
})
connection.onRequest(protocol.RegistrationRequest.type, () => null)
connection.listen()

function fail(why) {
  console.error(`second editor: ${why}`)
  server.kill()
  process.exit(1)
}

function expect(condition, why) {
  if (!condition) fail(why)
}

const timer = setTimeout(() => fail(`no answer in ${patience} ms`), patience)

/** Findings of the version of the document that was sent last. */
function findings() {
  return new Promise(done => waiting.push(told => {
    if (told.uri === uri && told.version === version) done(told.diagnostics)
  }))
}

function offset(position) {
  const lines = text.split('\n')
  return lines.slice(0, position.line).reduce((sum, line) => sum + line.length + 1, 0) + position.character
}

function position(at) {
  const before = text.slice(0, at).split('\n')
  return { line: before.length - 1, character: before[before.length - 1].length }
}

async function change(edit) {
  text = text.slice(0, offset(edit.range.start)) + edit.newText + text.slice(offset(edit.range.end))
  version++
  const after = findings()
  await connection.sendNotification(protocol.DidChangeTextDocumentNotification.type, {
    textDocument: { uri, version }, contentChanges: [{ range: edit.range, text: edit.newText }]
  })
  return after
}

const initialized = await connection.sendRequest(protocol.InitializeRequest.type, {
  processId: process.pid, rootUri: null, workspaceFolders: [{ uri: pathToFileURL(resolve(folder)).href, name: 'plans' }],
  capabilities: { workspace: { workspaceEdit: { documentChanges: true } } }
})
expect(initialized.serverInfo.name === 'wattle', 'the server does not say who it is')
await connection.sendNotification(protocol.InitializedNotification.type, {})

const opened = findings()
await connection.sendNotification(protocol.DidOpenTextDocumentNotification.type, {
  textDocument: { uri, languageId: 'wattle', version, text }
})
expect((await opened).length === 0, 'the example has findings')

const rating = /^ {2}1 +15 A/m.exec(text)
const end = rating.index + rating[0].length
const broken = await change({ range: { start: position(end - 2), end: position(end) }, newText: '' })
expect(broken.length === 1 && broken[0].code === 'unit-missing', `not one finding about a unit: ${JSON.stringify(broken)}`)
expect(text.slice(offset(broken[0].range.start), offset(broken[0].range.end)) === '15', 'the finding is not at the figure')

const actions = await connection.sendRequest(protocol.CodeActionRequest.type, {
  textDocument: { uri }, range: broken[0].range, context: { diagnostics: broken }
})
const fix = actions.find(action => action.isPreferred)
expect(fix, 'no fix is offered')
const [edits] = fix.edit.documentChanges
expect(edits.textDocument.uri === uri && edits.textDocument.version === version, 'the fix is for another text')
expect((await change(edits.edits[0])).length === 0, 'the fix does not mend it')

await connection.sendRequest(protocol.ShutdownRequest.type)
await connection.sendNotification(protocol.ExitNotification.type)
expect(await exited === 0, 'the server does not end well')
clearTimeout(timer)
console.log('opened, broken, found, mended')
process.exit(0)
