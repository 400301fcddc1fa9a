<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en" sourcelanguage="en">
<context>
    <name>Document</name>
    <message numerus="yes">
        <location filename="../../app/document/document_file.cpp" line="169"/>
        <source>%1; and %n more</source>
        <translation type="unfinished">
            <numerusform></numerusform>
            <numerusform></numerusform>
        </translation>
    </message>
</context>
<context>
    <name>FindingWords</name>
    <message numerus="yes">
        <location filename="../../app/panels/finding_words.cpp" line="59"/>
        <source>%n missed</source>
        <translation type="unfinished">
            <numerusform></numerusform>
            <numerusform></numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <location filename="../../app/panels/finding_words.cpp" line="60"/>
        <source>%n unknown</source>
        <translation type="unfinished">
            <numerusform></numerusform>
            <numerusform></numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <location filename="../../app/panels/finding_words.cpp" line="61"/>
        <source>%n of them accepted with a note</source>
        <translation type="unfinished">
            <numerusform></numerusform>
            <numerusform></numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <location filename="../../app/panels/finding_words.cpp" line="62"/>
        <source>Passes these checks, %n of them closely</source>
        <translation type="unfinished">
            <numerusform></numerusform>
            <numerusform></numerusform>
        </translation>
    </message>
</context>
<context>
    <name>MainWindow</name>
    <message numerus="yes">
        <location filename="../../app/editor/main_window.cpp" line="165"/>
        <source>%n plan(s) were not saved when the program ended.</source>
        <translation type="unfinished">
            <numerusform></numerusform>
            <numerusform></numerusform>
        </translation>
    </message>
</context>
</TS>
