@echo off
rem Runs Passband with the Java beside it, else with the one that is installed.
rem No brackets around lines with a path in them: "Program Files (x86)" has brackets of its own.
setlocal
set "java=%~dp0runtime\bin\java.exe"
if exist "%java%" goto run
if not defined JAVA_HOME goto installed
set "java=%JAVA_HOME%\bin\java.exe"
if exist "%java%" goto run
:installed
set "java="
for %%J in (java.exe) do set "java=%%~$PATH:J"
if defined java goto run
echo passband: there is no Java here: install Java 17 or later, or take the download with its own Java 1>&2
exit /b 2
:run
rem A command ends before more compiling would pay; the language server stays, and a fleet has thousands of records.
set "quick=-XX:TieredStopAtLevel=1"
if "%~1"=="server" set "quick="
if "%~1"=="fleet" set "quick="
"%java%" %quick% -XX:+UseSerialGC -XX:-UsePerfData -jar "%~dp0lib\passband-start.jar" %*
exit /b %ERRORLEVEL%
