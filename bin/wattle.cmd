@echo off
rem Starts Wattle as it was unpacked. Needs Java 17 or later: its own where one came with it, else from JAVA_HOME or the
rem search path. What is printed is UTF-8, so the console shows it as that while it runs, and as before afterwards.
setlocal DisableDelayedExpansion
set "WATTLE_LIB=%~dp0..\lib\wattle"
set "WATTLE_JAVA=java.exe"
if defined JAVA_HOME set "WATTLE_JAVA=%JAVA_HOME%\bin\java.exe"
if exist "%~dp0..\runtime\bin\java.exe" set "WATTLE_JAVA=%~dp0..\runtime\bin\java.exe"
if not exist "%WATTLE_LIB%\wattle.jar" (
  >&2 echo wattle: there is no "%WATTLE_LIB%\wattle.jar"; unpack the whole zip and start bin\wattle.cmd in it
  exit /b 2
)
if not "%WATTLE_JAVA%"=="java.exe" goto :there
where /q java.exe
if errorlevel 1 (
  >&2 echo wattle: there is no Java to run; install Java 17 or later, or set JAVA_HOME
  exit /b 2
)
goto :start
:there
if not exist "%WATTLE_JAVA%" (
  >&2 echo wattle: there is no "%WATTLE_JAVA%"; point JAVA_HOME at Java 17 or later
  exit /b 2
)
:start
set "WATTLE_PAGE="
for /f "tokens=2 delims=:." %%p in ('chcp') do set "WATTLE_PAGE=%%p"
chcp 65001 >nul 2>nul
set "WATTLE_FLAGS=-XX:TieredStopAtLevel=1"
if /i "%~1"=="language-server" set "WATTLE_FLAGS=-XX:-DontCompileHugeMethods -Xmx512m"
if /i "%~1"=="live" set "WATTLE_FLAGS=-XX:-DontCompileHugeMethods"
"%WATTLE_JAVA%" %WATTLE_FLAGS% -Xshare:auto -Djava.awt.headless=true -Djdk.console=java.base -jar "%WATTLE_LIB%\wattle.jar" %*
set "WATTLE_CODE=%ERRORLEVEL%"
if defined WATTLE_PAGE chcp %WATTLE_PAGE% >nul 2>nul
exit /b %WATTLE_CODE%
