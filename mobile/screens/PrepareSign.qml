// What a line of the day is about, as a sign: told, an event, a closure, a finding, a look, a reading.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: place

    property int sign: PrepareRows.NoSign
    property int grade: 0
    readonly property bool reads: sign === PrepareRows.Coating || sign === PrepareRows.Torque || sign === PrepareRows.Wall
    readonly property bool graded: sign === PrepareRows.Look || sign === PrepareRows.Grade || sign === PrepareRows.Finding

    implicitWidth: Tokens.signWidth
    implicitHeight: Tokens.signHeight

    KeySign {
        anchors.fill: parent
        visible: place.reads
        kind: place.sign === PrepareRows.Torque ? KeySign.Torque : place.sign === PrepareRows.Wall ? KeySign.Wall : KeySign.Coating
        ink: Tokens.ink
    }

    GradeGlyph {
        anchors.centerIn: parent
        visible: place.graded
        radius: Tokens.glyphInList * 0.7
        width: radius * 2.4
        height: width
        grade: place.grade
        ground: false
    }

    FindingSign {
        anchors.fill: parent
        visible: !place.reads && !place.graded && place.sign !== PrepareRows.NoSign
        kind: place.sign === PrepareRows.Closure ? FindingSign.ClosedOff : place.sign === PrepareRows.Told ? FindingSign.Reported : FindingSign.Arrow
        ink: Tokens.edge
        chalk: Tokens.chalk
        tape: Tokens.tape
        tapeInk: Tokens.tapeInk
    }
}
