@echo off
rem The twin of the launcher beside it, for Windows: starts Headrace from its folder of jars, and builds that folder
rem first if it is missing or older than the sources. Ends with the exit code of Headrace; with 5 if no supported JDK
rem is found or the build fails.

setlocal EnableExtensions DisableDelayedExpansion
for %%I in ("%~dp0..\..") do set "project=%%~fI"
set "jars=%project%\kernel\target\headrace\lib"

if defined JAVA_HOME goto fromhome
set "java="
for %%I in (java.exe) do set "java=%%~$PATH:I"
if not defined java (
    echo headrace: No java is on the path and JAVA_HOME is not set. Install a JDK 17, 21 or 25, or point JAVA_HOME at one. 1>&2
    exit /b 5
)
goto found
:fromhome
set "java=%JAVA_HOME%\bin\java.exe"
if not exist "%java%" (
    echo headrace: There is no bin\java.exe in the folder that JAVA_HOME names. Point it at a JDK 17, 21 or 25. 1>&2
    exit /b 5
)
:found

rem The line reads: openjdk version "17.0.9" 2023-10-17
set "version="
for /f "tokens=3" %%V in ('^""%java%" -version 2^>^&1 ^| findstr /c:" version "^"') do if not defined version set "version=%%~V"
for /f "tokens=1 delims=.-+" %%V in ("%version%") do set "version=%%V"
if "%version%"=="17" goto supported
if "%version%"=="21" goto supported
if "%version%"=="25" goto supported
echo headrace: This java is not supported. Headrace runs with JDK 17, 21 or 25: point JAVA_HOME at one. 1>&2
exit /b 5
:supported

rem The kernel's own jar is written anew at each build. PowerShell compares the dates; it comes with Windows.
set "HEADRACE_PROJECT=%project%"
powershell -NoProfile -NonInteractive -Command "$p = $env:HEADRACE_PROJECT; $built = Get-Item (Join-Path $p 'kernel\target\headrace\lib\headrace-kernel-*.jar') -ErrorAction SilentlyContinue | Select-Object -First 1; if (-not $built) { exit 1 }; $sources = 'pom.xml', 'dsl\pom.xml', 'dsl\src\main', 'kernel\pom.xml', 'kernel\src\main' | ForEach-Object { Get-ChildItem -LiteralPath (Join-Path $p $_) -Recurse -File }; if ($sources | Where-Object { $_.LastWriteTime -gt $built.LastWriteTime } | Select-Object -First 1) { exit 1 }; exit 0"
if not errorlevel 1 goto built

where mvn >nul 2>nul
if errorlevel 1 (
    echo headrace: Headrace is not built yet, and there is no mvn on the path. Install Maven 3.8.6 or newer and try again. 1>&2
    exit /b 5
)
echo headrace: building, which takes a minute or two the first time ... 1>&2
if not exist "%project%\kernel\target" mkdir "%project%\kernel\target"
set "log=%project%\kernel\target\build.log"
pushd "%project%"
call mvn -q -B -ntp -Dmaven.test.skip=true -Djacoco.skip=true -Dspotless.check.skip=true -Dmdep.analyze.skip=true package >"%log%" 2>&1 <nul
set "failed=%errorlevel%"
popd
if not "%failed%"=="0" (
    type "%log%" 1>&2
    echo headrace: The build failed; the lines above say why. Put that right and try again. 1>&2
    exit /b 5
)
:built

rem The shell edits lines where somebody types and reads; it asks the terminal through native code, which newer Java
rem remarks on unless it is allowed.
set "terminal=false"
set "native="
if /i not "%~1"=="shell" goto told
powershell -NoProfile -NonInteractive -Command "if ([Console]::IsInputRedirected -or [Console]::IsOutputRedirected) { exit 1 }"
if not errorlevel 1 set "terminal=true"
if "%version%"=="25" set "native=--illegal-native-access=allow"
:told

rem Results are printed in UTF-8, which the console understands in this code page.
chcp 65001 >nul
"%java%" -Dfile.encoding=UTF-8 -Djava.awt.headless=true -Dheadrace.colour=%terminal% -Dheadrace.terminal=%terminal% %native% -XX:+UseSerialGC -XX:+EnableDynamicAgentLoading -Xshare:auto -cp "%jars%\*" headrace.kernel.cli.Main %*
exit /b %errorlevel%
