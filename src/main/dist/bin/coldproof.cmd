@echo off
rem Starts coldproof from wherever this folder lies. Honours JAVA_HOME.
setlocal
set "home=%~dp0.."
set "java=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "java=%JAVA_HOME%\bin\java.exe"
rem A folder that brings its own Java uses it.
if exist "%home%\runtime\bin\java.exe" set "java=%home%\runtime\bin\java.exe"
"%java%" -XX:+UseSerialGC -Xshare:auto "-XX:SharedArchiveFile=%home%\lib\coldproof.jsa" -Xlog:disable -jar "%home%\lib\coldproof.jar" %*
exit /b %ERRORLEVEL%
