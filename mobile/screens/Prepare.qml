// Prepare: what to do in the time there is at a site, what to take, and what to carry.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Room {
    id: room

    required property PrepareModel prepare
    readonly property real across: portrait ? width : width - side.width
    readonly property real down: portrait ? height - side.height : height

    signal goneBack

    whereLine: prepare.siteName
    cells: PrepareCells {
        prepare: room.prepare
        portrait: room.portrait
    }
    Keys.onEscapePressed: room.goneBack()

    Rectangle {
        anchors.fill: parent
        color: Tokens.paper
    }

    PrepareTime {
        id: time

        x: Tokens.margin
        y: Tokens.inset
        width: room.across - Tokens.margin * 2
        prepare: room.prepare
    }

    ListView {
        id: runs

        objectName: "dayRuns"
        x: Tokens.smallGap
        anchors.top: time.bottom
        anchors.topMargin: Tokens.gap
        width: room.across - Tokens.gap
        height: contentItem.childrenRect.height
        orientation: ListView.Horizontal
        boundsBehavior: Flickable.StopAtBounds
        clip: true
        model: room.prepare.runs
        Accessible.role: Accessible.List
        Accessible.name: qsTr("Runs; marks show the parts to measure")

        delegate: SiteRunDrawing {
            pixelsPerMetre: Tokens.bandScaleMost
            onChosen: run => room.prepare.openRun(run)
        }
    }

    InkText {
        id: legend

        anchors.right: time.right
        anchors.top: runs.bottom
        text: qsTr("arrow heads show the parts to measure; touch a line for its first part")
        color: Tokens.ink2
        font.pixelSize: Tokens.captionText
    }

    ListView {
        id: lines

        objectName: "dayLines"
        anchors.top: legend.bottom
        anchors.topMargin: Tokens.smallGap
        x: Tokens.margin
        width: time.width
        height: room.down - y - Tokens.smallGap
        boundsBehavior: Flickable.StopAtBounds
        clip: true
        model: room.prepare.lines
        Accessible.role: Accessible.List
        Accessible.name: qsTr("What to do, first things first")

        delegate: PrepareLine {
            width: lines.width
            portrait: room.portrait
            onClicked: room.prepare.openLine(index)
        }
    }

    Rectangle {
        anchors.bottom: lines.bottom
        x: lines.x
        width: lines.width
        height: more.implicitHeight + Tokens.gap
        visible: lines.contentHeight - lines.contentY > lines.height + Tokens.inset
        color: Tokens.tapeMeasure

        InkText {
            id: more

            anchors.centerIn: parent
            text: qsTr("more below: push the list up")
            font.pixelSize: Tokens.smallText
        }
    }

    PrepareSide {
        id: side

        anchors.right: parent.right
        anchors.bottom: parent.bottom
        width: room.portrait ? parent.width : Tokens.padWidth
        height: room.portrait ? Tokens.portraitPadHeight : parent.height
        prepare: room.prepare
        portrait: room.portrait
    }

    MessageBar {
        objectName: "prepareMessage"
        anchors.bottom: lines.bottom
        x: Tokens.inset
        width: room.across - Tokens.inset * 2
        text: room.prepare.message
        onPutAway: room.prepare.putAway()
    }

    NoSites {
        anchors.fill: lines
        visible: room.prepare.trouble !== ""
        heading: qsTr("The day could not be prepared.")
        text: room.prepare.trouble
    }
}
