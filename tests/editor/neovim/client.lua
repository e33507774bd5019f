-- A headless Neovim as a person has it: it starts the server, opens files, and writes down what it shows.
-- Works with Neovim 0.7, which Debian 12 has, and with later ones.
local work = vim.fn.json_decode(vim.fn.readfile(vim.env.PLUMBMARK_WORK))
local client = vim.lsp.start_client({ name = "plumbmark", cmd = work.cmd, root_dir = work.root })
local results = {}

-- A buffer has lines, and no line behind the last line end.
local function lines_of(text)
  return vim.split((string.gsub(text, "\n$", "")), "\n", { plain = true })
end

local function shown(buffer)
  local all = {}
  for _, each in ipairs(vim.diagnostic.get(buffer)) do
    local line = vim.api.nvim_buf_get_lines(buffer, each.lnum, each.lnum + 1, false)[1] or ""
    table.insert(all, { line = each.lnum + 1, text = line, severity = each.severity, code = each.code, message = each.message })
  end
  return all
end

local function is_there(buffer, wanted)
  for _, each in ipairs(shown(buffer)) do
    if each.line == wanted.line and string.find(each.code or "", "^document%.") then return true end
  end
  return false
end

for _, case in ipairs(work.cases) do
  vim.cmd("edit! " .. vim.fn.fnameescape(work.root .. "/" .. case.file))
  local buffer = vim.api.nvim_get_current_buf()
  vim.lsp.buf_attach_client(buffer, client)
  vim.wait(20000, function() return vim.lsp.buf_is_attached(buffer, client) end, 20)
  vim.api.nvim_buf_set_lines(buffer, 0, -1, false, lines_of(case.text))
  local came = vim.wait(30000, function() return is_there(buffer, case) end, 20)
  local result = { slip = case.slip, came = came, shown = shown(buffer) }
  if case.mend then
    vim.api.nvim_win_set_cursor(0, { case.line, 0 })
    local params = vim.lsp.util.make_range_params()
    params.context = { diagnostics = {} }
    local answers = vim.lsp.buf_request_sync(buffer, "textDocument/codeAction", params, 20000) or {}
    for _, answer in pairs(answers) do
      for _, action in ipairs(answer.result or {}) do
        if action.isPreferred and not result.applied then
          vim.lsp.util.apply_workspace_edit(action.edit, "utf-16")
          result.applied = action.title
        end
      end
    end
    vim.wait(30000, function() return not is_there(buffer, case) end, 20)
    result.after = shown(buffer)
    result.text = table.concat(vim.api.nvim_buf_get_lines(buffer, 0, -1, false), "\n") .. "\n"
  end
  table.insert(results, result)
  -- The next case begins from what lies on the disk.
  vim.api.nvim_buf_set_lines(buffer, 0, -1, false, lines_of(case.original))
  vim.wait(30000, function() return not is_there(buffer, case) end, 20)
end

vim.fn.writefile({ vim.fn.json_encode(results) }, vim.env.PLUMBMARK_RESULTS)
vim.lsp.stop_client(client)
vim.wait(2000, function() return vim.lsp.client_is_stopped(client) end, 20)
vim.cmd("qall!")
