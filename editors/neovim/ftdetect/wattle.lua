vim.api.nvim_create_autocmd({ 'BufRead', 'BufNewFile' }, {
  pattern = '*.wattle',
  callback = function() vim.bo.filetype = 'wattle' end,
})
