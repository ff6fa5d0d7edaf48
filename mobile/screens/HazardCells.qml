// What stands in the title block on every screen: nobody is told of what cannot wait, or it is not made safe.
import QtQuick
import Kneerail.Ui

Row {
    id: cells

    required property FindingsModel findings
    required property HazardLine line
    /// Before the cautions are read nothing else is said.
    property bool says: true
    /// The one that is open: its own cell of the run makes place for the line.
    property Room room: null
    readonly property bool portrait: room !== null && room.portrait
    readonly property string untold: says ? line.words : ""
    readonly property string notSafe: says && findings.notSafeCount !== "" ? qsTr("%1 · %2").arg(findings.notSafeCount).arg(findings.notSafeWords) : ""
    /// Both, where there is one line for them.
    readonly property string inOneLine: untold === "" ? notSafe : notSafe === "" ? untold : qsTr("%1 · %2").arg(untold).arg(findings.notSafeWords)

    signal findingWanted

    function touch() {
        if (cells.untold !== "")
            return cells.line.open();
        cells.findings.openNotSafe();
        cells.findingWanted();
    }

    onRoomChanged: line.close()

    height: parent ? parent.height : implicitHeight

    Binding {
        target: cells.room
        property: "lined"
        value: cells.untold !== ""
        when: cells.room !== null
    }

    TitleCell {
        objectName: "untoldCell"
        visible: cells.untold !== "" && !cells.portrait
        width: Math.min(implicitWidth, Tokens.cellWidth * 1.5)
        caption: cells.notSafe === "" ? qsTr("Tell somebody") : cells.findings.notSafeWords
        text: cells.untold
        lookAgain: true
        onClicked: cells.touch()
    }

    TitleCell {
        objectName: "notSafeCell"
        visible: cells.notSafe !== "" && cells.untold === "" && !cells.portrait
        caption: cells.findings.notSafeCount
        text: cells.findings.notSafeWords
        lookAgain: true
        onClicked: cells.touch()
    }
}
