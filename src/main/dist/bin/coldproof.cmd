@echo off
rem Starts coldproof from wherever this folder lies. Honours JAVA_HOME.
setlocal
set "home=%~dp0.."
set "java=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "java=%JAVA_HOME%\bin\java.exe"
rem A folder that brings its own Java uses it.
if exist "%home%\runtime\bin\java.exe" set "java=%home%\runtime\bin\java.exe"
rem Long sums (rehearsals) and large logs (from 128 MiB) repay the full compiler; every other verb is over before it would help.
set "tiers=-XX:TieredStopAtLevel=1 -XX:+UseG1GC -Xms96m -Xmn64m"
if "%~1"=="rehearse" set "tiers=-XX:+UseSerialGC"
if "%~1"=="trace" for %%A in (%*) do if %%~zA GTR 134217728 set "tiers=-XX:+UseSerialGC -Xmn32m"
rem The archive is mapped where it was made for and its classes, checked when it was made, are not checked again.
"%java%" -XX:+IgnoreUnrecognizedVMOptions -XX:+UnlockDiagnosticVMOptions -XX:ArchiveRelocationMode=0 -XX:-BytecodeVerificationRemote ^
  -XX:-UsePerfData -Xshare:auto "-XX:SharedArchiveFile=%home%\lib\coldproof.jsa" -Xlog:disable %tiers% "-Dlibrary.jline.path=%home%\lib\native" -jar "%home%\lib\coldproof.jar" %*
exit /b %ERRORLEVEL%
