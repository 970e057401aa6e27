@echo off
rem Runs Passband with the Java that lies beside it, else JAVA_HOME's, else the one on the PATH.
setlocal
set "JAVA=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "JAVA=%JAVA_HOME%\bin\java.exe"
if exist "%~dp0runtime\bin\java.exe" set "JAVA=%~dp0runtime\bin\java.exe"
"%JAVA%" -XX:TieredStopAtLevel=1 -XX:+UseSerialGC -XX:-UsePerfData -Xshare:auto -cp "%~dp0lib\passband.jar" passband.command.Main %*
