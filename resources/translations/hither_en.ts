<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en" sourcelanguage="en">
<context>
    <name>JobStatus</name>
    <message numerus="yes">
        <source>%n mount(s) end without a switch</source>
        <translation>
            <numerusform>%n mount ends without a switch</numerusform>
            <numerusform>%n mounts end without a switch</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n switch(es) serve no site yet</source>
        <translation>
            <numerusform>%n switch serves no site yet</numerusform>
            <numerusform>%n switches serve no site yet</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n part(s)</source>
        <translation>
            <numerusform>%n part</numerusform>
            <numerusform>%n parts</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n check(s) missed</source>
        <translation>
            <numerusform>%n check missed</numerusform>
            <numerusform>%n checks missed</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n check(s) unknown</source>
        <translation>
            <numerusform>%n check unknown</numerusform>
            <numerusform>%n checks unknown</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>hither::BuildOfferList</name>
    <message numerus="yes">
        <source>%n adapters</source>
        <translation>
            <numerusform>%n adapter</numerusform>
            <numerusform>%n adapters</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>hither::BuildWaysBar</name>
    <message numerus="yes">
        <source>%n checks missed</source>
        <translation>
            <numerusform>%n check missed</numerusform>
            <numerusform>%n checks missed</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n close</source>
        <translation>
            <numerusform>%n close</numerusform>
            <numerusform>%n close</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n unknown</source>
        <translation>
            <numerusform>%n unknown</numerusform>
            <numerusform>%n unknown</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>hither::CommandSearch</name>
    <message numerus="yes">
        <source>%n command(s). Up and down choose, Enter does it, Esc leaves.</source>
        <translation>
            <numerusform>%n command. Up and down choose, Enter does it, Esc leaves.</numerusform>
            <numerusform>%n commands. Up and down choose, Enter does it, Esc leaves.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>hither::Document</name>
    <message numerus="yes">
        <source>%1; and %n more</source>
        <translation>
            <numerusform>%1; and %n more</numerusform>
            <numerusform>%1; and %n more</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>hither::FindingWords</name>
    <message numerus="yes">
        <source>%n missed</source>
        <translation>
            <numerusform>%n missed</numerusform>
            <numerusform>%n missed</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n unknown</source>
        <translation>
            <numerusform>%n unknown</numerusform>
            <numerusform>%n unknown</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n of them accepted with a note</source>
        <translation>
            <numerusform>%n of them accepted with a note</numerusform>
            <numerusform>%n of them accepted with a note</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Passes these checks, %n of them closely</source>
        <translation>
            <numerusform>Passes these checks, %n of them closely</numerusform>
            <numerusform>Passes these checks, %n of them closely</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>hither::MainWindow</name>
    <message numerus="yes">
        <source>%n plan(s) were not saved when the program ended.</source>
        <translation>
            <numerusform>%n plan was not saved when the program ended.</numerusform>
            <numerusform>%n plans were not saved when the program ended.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>hither::RecoveryCard</name>
    <message numerus="yes">
        <source>%n difference(s) from the file:</source>
        <translation>
            <numerusform>%n difference from the file:</numerusform>
            <numerusform>%n differences from the file:</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>hither::RecoveryDialog</name>
    <message numerus="yes">
        <source>The program ended with %n plan(s) not saved. Nothing of it is lost unless you discard it.</source>
        <translation>
            <numerusform>The program ended with %n plan not saved. Nothing of it is lost unless you discard it.</numerusform>
            <numerusform>The program ended with %n plans not saved. Nothing of it is lost unless you discard it.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>hither::SupportPanel</name>
    <message numerus="yes">
        <source>Tube sizes (%n)</source>
        <translation>
            <numerusform>Tube sizes (%n)</numerusform>
            <numerusform>Tube sizes (%n)</numerusform>
        </translation>
    </message>
</context>
</TS>
