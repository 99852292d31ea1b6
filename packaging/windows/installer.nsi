; Makes one installer of the folder that bundle.py made on Windows, with the package NSIS 3:
;     makensis /DVERSION=0.1.0 packaging\windows\installer.nsi
; For one user, so nobody is asked for an administrator's password.

!include "MUI2.nsh"
!ifndef VERSION
  !define VERSION "0.1.0"
!endif
!ifndef FOLDER
  !define FOLDER "..\..\dist\grow-space-light-planner"
!endif
!define TITLE "Grow space light planner"
!define NAME "grow-space-light-planner"
!define KIND "GrowSpaceLightPlan"
!define ENTRY "Software\Microsoft\Windows\CurrentVersion\Uninstall\${NAME}"

Unicode true
Name "${TITLE}"
OutFile "${NAME}-${VERSION}-setup.exe"
RequestExecutionLevel user
InstallDir "$LOCALAPPDATA\Programs\${NAME}"
SetCompressor /SOLID lzma

!insertmacro MUI_PAGE_DIRECTORY
!insertmacro MUI_PAGE_INSTFILES
!insertmacro MUI_UNPAGE_CONFIRM
!insertmacro MUI_UNPAGE_INSTFILES
!insertmacro MUI_LANGUAGE "English"

Section
  ; What an older version left: its own folder and nothing beside it.
  RMDir /r "$INSTDIR\_internal"
  SetOutPath "$INSTDIR"
  File /r "${FOLDER}/*"
  WriteUninstaller "$INSTDIR\uninstall.exe"
  CreateShortcut "$SMPROGRAMS\${TITLE}.lnk" "$INSTDIR\${NAME}.exe"
  ; Windows looks at the last ending only, which plans share with other files: the program is
  ; offered for them and takes none away.
  WriteRegStr HKCU "Software\Classes\${KIND}" "" "Grow space light plan"
  WriteRegStr HKCU "Software\Classes\${KIND}\shell\open\command" "" '"$INSTDIR\${NAME}.exe" "%1"'
  WriteRegStr HKCU "Software\Classes\.json\OpenWithProgids" "${KIND}" ""
  WriteRegStr HKCU "${ENTRY}" "DisplayName" "${TITLE}"
  WriteRegStr HKCU "${ENTRY}" "DisplayVersion" "${VERSION}"
  WriteRegStr HKCU "${ENTRY}" "UninstallString" '"$INSTDIR\uninstall.exe"'
SectionEnd

Section "Uninstall"
  ; Plans, lamps and settings of the user stay.
  RMDir /r "$INSTDIR\_internal"
  Delete "$INSTDIR\${NAME}.exe"
  Delete "$INSTDIR\uninstall.exe"
  RMDir "$INSTDIR"
  Delete "$SMPROGRAMS\${TITLE}.lnk"
  DeleteRegKey HKCU "Software\Classes\${KIND}"
  DeleteRegValue HKCU "Software\Classes\.json\OpenWithProgids" "${KIND}"
  DeleteRegKey HKCU "${ENTRY}"
SectionEnd
