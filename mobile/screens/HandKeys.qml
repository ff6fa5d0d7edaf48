// Who walks, and with which gauge and wrench: one key each, those of now marked.
import QtQuick
import Kneerail.Ui

Item {
    id: pad

    required property WalkModel walk
    property bool wide: false

    signal leave
    signal closeWanted

    Flickable {
        width: parent.width
        height: back.y - Tokens.gap
        contentHeight: lists.height
        interactive: contentHeight > height
        clip: interactive

        Column {
            id: lists

            width: parent.width
            spacing: Tokens.margin

            NamedKeys {
                width: parent.width
                caption: qsTr("Who walks from now on")
                named: "person"
                names: pad.walk.people
                now: pad.walk.personNow
                columns: pad.wide ? 8 : 5
                onChosen: place => pad.walk.choosePerson(place)
            }

            NamedKeys {
                visible: names.length > 0
                width: parent.width
                caption: qsTr("Coating gauge in the hand")
                named: "gauge"
                names: pad.walk.gauges
                now: pad.walk.gaugeNow
                columns: pad.wide ? 4 : 2
                onChosen: place => pad.walk.chooseGauge(place)
            }

            NamedKeys {
                visible: names.length > 0
                width: parent.width
                caption: qsTr("Torque wrench in the hand")
                named: "wrench"
                names: pad.walk.wrenches
                now: pad.walk.wrenchNow
                columns: pad.wide ? 4 : 2
                onChosen: place => pad.walk.chooseWrench(place)
            }

            NamedKeys {
                visible: names.length > 0
                width: parent.width
                caption: qsTr("Wall gauge in the hand")
                named: "wallGauge"
                names: pad.walk.wallGauges
                now: pad.walk.wallGaugeNow
                columns: pad.wide ? 4 : 2
                onChosen: place => pad.walk.chooseWallGauge(place)
            }

            LookKeys {
                width: parent.width
                brief: true
            }
        }
    }

    OctagonKey {
        id: back

        objectName: "leaveHands"
        x: closeKey.visible ? closeKey.width + Tokens.gap : 0
        y: parent.height - height
        width: parent.width - x
        height: Tokens.mainActHeight
        look: OctagonKey.Act
        text: qsTr("Back to the walk")
        onClicked: pad.leave()
    }

    OctagonKey {
        id: closeKey

        objectName: "closeVisitKey"
        visible: pad.walk.visitOpened && pad.walk.writable
        y: back.y
        width: (parent.width - Tokens.gap) * 0.45
        height: back.height
        text: qsTr("Close visit")
        onClicked: pad.closeWanted()
    }
}
