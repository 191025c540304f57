;;; wattle-mode.el --- House wiring as text -*- lexical-binding: t; -*-

;; Version: 0.1.0
;; Package-Requires: ((emacs "26.1"))
;; Keywords: languages

;;; Commentary:

;; A major mode for plans, with the language server where eglot is there: (add-hook 'wattle-mode-hook #'eglot-ensure).
;; M-x wattle-check lists the findings, M-x wattle-lockout says what to switch off for the place at point.

;;; Code:

(defgroup wattle nil "House wiring as text." :group 'languages)

(defcustom wattle-command '("wattle")
  "The program with what stands before its commands."
  :type '(repeat string))

(defconst wattle-blocks
  '("plan" "revision" "use" "code" "parts" "rules" "dwelling" "service" "panel" "branch" "room" "trial" "expect" "pattern" "place"
    "rule" "silence")
  "Words that begin a block or a line.")

(defvar wattle-mode-syntax-table
  (let ((table (make-syntax-table)))
    (modify-syntax-entry ?/ ". 12" table)
    (modify-syntax-entry ?\n ">" table)
    (modify-syntax-entry ?\" "\"" table)
    (modify-syntax-entry ?- "_" table)
    (modify-syntax-entry ?. "_" table)
    table))

(defun wattle-indent-line ()
  "Indent by the braces above; `wattle tidy' sets the columns."
  (interactive)
  (let ((depth (save-excursion
                 (back-to-indentation)
                 (- (car (syntax-ppss)) (if (looking-at "[})]") 1 0)))))
    (save-excursion (indent-line-to (* 2 (max 0 depth))))
    (when (< (current-column) (current-indentation)) (back-to-indentation))))

;;;###autoload
(define-derived-mode wattle-mode prog-mode "Wattle"
  "Mode for the wiring of a house."
  (setq-local comment-start "// ")
  (setq-local comment-start-skip "//+ *")
  (setq-local indent-tabs-mode nil)
  (setq-local indent-line-function #'wattle-indent-line)
  (setq-local font-lock-defaults
              `(((,(regexp-opt wattle-blocks 'symbols) . font-lock-keyword-face)
                 ("\\_<branch +\\([A-Za-z][A-Za-z0-9-]*\\)" 1 font-lock-function-name-face)
                 ("\\_<\\(?:room\\|panel\\|service\\) +\\([A-Za-z][A-Za-z0-9-]*\\)" 1 font-lock-type-face)
                 ("\\_<[0-9][0-9./]*\\_>" . font-lock-constant-face)))))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.wattle\\'" . wattle-mode))

(defvar eglot-server-programs)
(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs
               `(wattle-mode . ,(lambda (&rest _) (append wattle-command '("language-server"))))))

(defun wattle--run (name &rest arguments)
  "Run wattle with ARGUMENTS and show what it says in buffer NAME."
  (save-buffer)
  (let ((line (append wattle-command arguments))
        (buffer (get-buffer-create name)))
    (with-current-buffer buffer
      (let ((inhibit-read-only t) (coding-system-for-read 'utf-8))
        (erase-buffer)
        (apply #'call-process (car line) nil t nil (cdr line)))
      (compilation-mode)
      (goto-char (point-min)))
    (display-buffer buffer)
    buffer))

(defun wattle-check ()
  "List what is wrong with this plan; the places can be followed."
  (interactive)
  (wattle--run "*wattle check*" "check" (buffer-file-name)))

(defun wattle-lockout (place)
  "Say which handles to open before work at PLACE."
  (interactive (list (read-string "Box, device, room, branch or panel: " (thing-at-point 'symbol t))))
  (apply #'wattle--run "*wattle lockout*" "lockout" (buffer-file-name) (split-string place)))

(provide 'wattle-mode)
;;; wattle-mode.el ends here
