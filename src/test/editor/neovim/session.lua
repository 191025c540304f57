-- Opens a plan with a mistake, waits for the server's finding, and tells it; then the lockout of a box.
local function finish(text, code)
  io.stdout:write(text .. '\n')
  vim.cmd(code == 0 and 'qa!' or 'cq!')
end

local ok, problem = pcall(function()
  assert(vim.bo.filetype == 'wattle', 'filetype is ' .. vim.bo.filetype)
  assert(vim.wait(60000, function() return #vim.diagnostic.get(0) > 0 end, 50), 'no findings in a minute')
  local first = vim.diagnostic.get(0)[1]
  io.stdout:write('line ' .. (first.lnum + 1) .. ': ' .. first.message:gsub('\n.*', '') .. '\n')
  vim.cmd('WattleCheck')
  io.stdout:write('quickfix ' .. #vim.fn.getqflist() .. '\n')
  vim.cmd('cclose')
  vim.cmd('WattleLockout branch hall')
  io.stdout:write('lockout ' .. table.concat(vim.api.nvim_buf_get_lines(0, 0, -1, false), ' ') .. '\n')
end)
finish(ok and 'done' or tostring(problem), ok and 0 or 1)
