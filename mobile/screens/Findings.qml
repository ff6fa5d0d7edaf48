// Findings: tags hung on a rail, what cannot wait first. Touch one to open it.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Room {
    id: room

    required property FindingsModel findings
    required property WalkModel walk
    readonly property bool open: findings.opened >= 0

    signal findWanted

    whereLine: qsTr("%1 · %2").arg(findings.siteName).arg(walk.runName)
    keptLine: findings.countWords
    cells: FindingsCells {
        findings: room.findings
        walk: room.walk
        portrait: room.portrait
    }
    Keys.onEscapePressed: findings.close()

    Binding {
        target: room.findings
        property: "shown"
        value: room.visible
    }

    Rectangle {
        anchors.fill: parent
        color: Tokens.paper
    }

    SleeveTube {
        id: tube

        y: Tokens.pageMargin * 1.5
        width: parent.width
        height: Tokens.tubeHeight + Tokens.keyEdge
        sleeve: false
        stroke: Tokens.keyEdge
        zinc: Tokens.zinc
        light: Tokens.zincLight
        shade: Tokens.zincShade
        edge: Tokens.edge
    }

    ListView {
        id: tags

        objectName: "findingTags"
        visible: !room.open
        y: tube.y - Tokens.smallGap
        width: parent.width
        height: foot.y - y - Tokens.margin
        orientation: ListView.Horizontal
        leftMargin: Tokens.margin
        rightMargin: Tokens.margin
        spacing: Tokens.inset
        boundsBehavior: Flickable.StopAtBounds
        model: room.findings
        Accessible.role: Accessible.List
        Accessible.name: qsTr("Findings")

        delegate: FindingTag {
            height: tags.height
            hangs: tube.height + Tokens.pageMargin
            onClicked: room.findings.open(index)
        }
    }

    Column {
        objectName: "nothingFound"
        visible: room.findings.known && room.findings.count === 0
        anchors.centerIn: parent
        width: Math.min(parent.width - Tokens.pageMargin * 2, Tokens.padWidth * 1.5)
        spacing: Tokens.gap

        InkText {
            width: parent.width
            text: room.findings.emptyWords
            bold: true
            font.pixelSize: Tokens.mainText
            horizontalAlignment: Text.AlignHCenter
            wrapMode: Text.Wrap
            Accessible.role: Accessible.StaticText
            Accessible.name: text
        }

        InkText {
            width: parent.width
            text: room.findings.lastLook
            color: Tokens.ink2
            horizontalAlignment: Text.AlignHCenter
            wrapMode: Text.Wrap
            Accessible.role: Accessible.StaticText
            Accessible.name: text
        }
    }

    FindingsFoot {
        id: foot

        visible: !room.open
        anchors.bottom: parent.bottom
        width: parent.width
        findings: room.findings
        portrait: room.portrait
        more: tags.contentWidth > tags.width
        onFindWanted: room.findWanted()
    }

    MadeOnce {
        shown: room.open

        FindingSheet {
            visible: room.open
            anchors.fill: room
            findings: room.findings
            undoes: room.walk.undoWords
            portrait: room.portrait
            onUndo: room.walk.undo()
        }
    }
}
