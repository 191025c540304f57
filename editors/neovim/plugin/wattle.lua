-- Wattle in Neovim 0.7 and later: starts the language server once for each folder with plans, and :WattleCheck and
-- :WattleLockout, whose results come into the quickfix list and into a window below.
-- g:wattle_command names the program, as a word or as a list; it is taken from the path otherwise.
if vim.g.loaded_wattle then return end
vim.g.loaded_wattle = true

local function command(...)
  local given = vim.g.wattle_command or 'wattle'
  local line = type(given) == 'table' and vim.deepcopy(given) or { given }
  vim.list_extend(line, { ... })
  return line
end

local clients = {}

local function attach(buffer)
  local folder = vim.fn.fnamemodify(vim.api.nvim_buf_get_name(buffer), ':p:h')
  local id = clients[folder]
  if not id or not vim.lsp.get_client_by_id(id) then
    if vim.fn.executable(command()[1]) == 0 then
      vim.notify('wattle: ' .. command()[1] .. ' is not on the path; set g:wattle_command', vim.log.levels.WARN)
      return
    end
    -- vim.lsp.start would do this from 0.8 on; 0.7 has the two steps alone.
    id = vim.lsp.start_client({
      name = 'wattle',
      cmd = command('language-server'),
      root_dir = folder,
      on_exit = function() clients[folder] = nil end,
    })
    clients[folder] = id
  end
  if id then vim.lsp.buf_attach_client(buffer, id) end
end

local function syntax()
  vim.bo.commentstring = '// %s'
  -- The server colors by meaning where an editor asks for it, which this does not before 0.9.
  vim.cmd([[
    syntax match wattleComment "//.*$"
    syntax region wattleText start=+"+ skip=+\\.+ end=+"+ oneline
    syntax keyword wattleBlock plan revision use code parts rules dwelling service panel branch room trial expect pattern place rule silence
    syntax match wattleFigure "\<[0-9][0-9./]*\>"
    highlight default link wattleComment Comment
    highlight default link wattleText String
    highlight default link wattleBlock Keyword
    highlight default link wattleFigure Number
  ]])
end

vim.api.nvim_create_autocmd('FileType', {
  pattern = 'wattle',
  callback = function(event)
    syntax()
    attach(event.buf or vim.api.nvim_get_current_buf())
  end,
})

vim.api.nvim_create_user_command('WattleCheck', function()
  vim.cmd('silent write')
  local file = vim.api.nvim_buf_get_name(0)
  local said = vim.fn.system(command('check', '--format', 'json', file))
  local read, document = pcall(vim.fn.json_decode, said)
  if not read then
    vim.notify(said, vim.log.levels.ERROR)
    return
  end
  local items = {}
  for _, finding in ipairs(document.findings) do
    if finding.place then
      table.insert(items, {
        filename = finding.place.file, lnum = finding.place.line, col = finding.place.column,
        text = finding.headline .. ' [' .. finding.rule .. ']', type = finding.severity:sub(1, 1):upper(),
      })
    end
  end
  vim.fn.setqflist({}, ' ', { title = 'wattle check', items = items })
  if #items > 0 then vim.cmd('copen') else vim.notify('wattle: nothing found; figures are an aid') end
end, {})

vim.api.nvim_create_user_command('WattleLockout', function(given)
  local place = given.args ~= '' and given.args or vim.fn.expand('<cWORD>'):gsub('[^%w%.%-].*$', '')
  local lines = vim.fn.systemlist(vim.list_extend(command('lockout', vim.api.nvim_buf_get_name(0)), vim.split(place, ' ')))
  vim.cmd('botright new')
  vim.bo.buftype = 'nofile'
  vim.bo.bufhidden = 'wipe'
  vim.api.nvim_buf_set_lines(0, 0, -1, false, lines)
end, { nargs = '*' })
