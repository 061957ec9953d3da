@echo off
rem Starts swapworth.jar, which lies beside this file, with the settings that suit short runs. Needs Java 17 or newer.
setlocal DisableDelayedExpansion
set "HERE=%~dp0"
if not exist "%HERE%swapworth.jar" (
    echo swapworth: there is no swapworth.jar beside "%~f0"; 'mvn -q -DskipTests package' makes it 1>&2
    exit /b 2
)
set "JAVA="
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java.exe"
if not defined JAVA for %%i in (java.exe) do set "JAVA=%%~$PATH:i"
if not defined JAVA (
    echo swapworth: no Java found on the path and JAVA_HOME is not set; Java 17 or newer is needed 1>&2
    exit /b 2
)
if not exist "%JAVA%" (
    echo swapworth: no Java found at "%JAVA%", where JAVA_HOME points; Java 17 or newer is needed 1>&2
    exit /b 2
)

rem The release file beside a Java names its version at no cost; only without one is Java itself asked.
set "VERSION="
for %%i in ("%JAVA%") do set "RELEASE=%%~dpi..\release"
if exist "%RELEASE%" for /f "usebackq tokens=1,2 delims==" %%a in ("%RELEASE%") do if "%%a"=="JAVA_VERSION" set "VERSION=%%~b"
if not defined VERSION for /f "usebackq tokens=2,3" %%a in (`call "%JAVA%" -version 2^>^&1`) do if "%%a"=="version" set "VERSION=%%~b"
rem A version that nobody tells is taken for a new one.
set "MAJOR=17"
for /f "tokens=1 delims=.-+_" %%a in ("%VERSION%") do set "MAJOR=%%a"
if "%MAJOR%"=="1" for /f "tokens=2 delims=.-+_" %%a in ("%VERSION%") do set "MAJOR=%%a"
if %MAJOR% LSS 17 (
    echo swapworth: Java 17 or newer is needed; "%JAVA%" is Java %MAJOR% 1>&2
    exit /b 2
)

rem With a file of more than some 300,000 rows little room for what is new and little to spare beside what is kept take half of the memory
rem and no more time; more than some 3,000,000 keep the second compiler tier busy long enough.
set "TIER=-XX:TieredStopAtLevel=1"
set "ROOM="
:word
if "%~1"=="" goto start
set "SIZE=%~z1"
if not defined SIZE set "SIZE=0"
if %SIZE% GTR 30000000 set "ROOM=-XX:PretenureSizeThreshold=32768 -XX:MinHeapFreeRatio=10 -XX:MaxHeapFreeRatio=30"
if %SIZE% GTR 300000000 set "TIER=-XX:TieredStopAtLevel=4"
shift
goto word

:start
rem Two collectors of garbage are refused: one that is chosen for every Java stands.
set "SERIAL=-XX:+UseSerialGC"
if defined JDK_JAVA_OPTIONS set JDK_JAVA_OPTIONS | findstr /c:"-XX:+Use" >nul && set "SERIAL="
if defined JAVA_TOOL_OPTIONS set JAVA_TOOL_OPTIONS | findstr /c:"-XX:+Use" >nul && set "SERIAL="
if defined _JAVA_OPTIONS set _JAVA_OPTIONS | findstr /c:"-XX:+Use" >nul && set "SERIAL="
rem An archive of loaded classes that fits neither this Java nor this jar is passed over, and no word is lost about it.
"%JAVA%" -Xlog:disable -Xshare:auto "-XX:SharedArchiveFile=%HERE%swapworth.jsa" -XX:+UnlockDiagnosticVMOptions -XX:ArchiveRelocationMode=0 %TIER% -XX:Tier3BackEdgeThreshold=5000 -Xmn64m %ROOM% %SERIAL% -Djava.awt.headless=true -Dswapworth.started=launcher -jar "%HERE%swapworth.jar" %*
exit /b %ERRORLEVEL%
