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

            Grid {
                id: own

                readonly property real half: (width - spacing) / 2

                width: parent.width
                columns: 2
                spacing: Tokens.margin

                NamedKeys {
                    width: own.half
                    caption: qsTr("This screen")
                    named: "theme"
                    names: [qsTr("Light"), qsTr("Dark")]
                    now: Tokens.dark ? 1 : 0
                    columns: 2
                    onChosen: place => Tokens.dark = place === 1
                }

                NamedKeys {
                    width: own.half
                    caption: qsTr("Hand on the keys")
                    named: "hand"
                    names: [qsTr("Left"), qsTr("Right")]
                    now: Tokens.leftHanded ? 0 : 1
                    columns: 2
                    onChosen: place => Tokens.leftHanded = place === 0
                }

                NamedKeys {
                    width: own.half
                    caption: qsTr("Motion")
                    named: "motion"
                    names: [qsTr("Full"), qsTr("Less")]
                    now: Tokens.lessMotion ? 1 : 0
                    columns: 2
                    onChosen: place => Tokens.lessMotion = place === 1
                }

                NamedKeys {
                    visible: Tokens.soundIsThere
                    width: own.half
                    caption: qsTr("Sounds")
                    named: "sound"
                    names: [qsTr("On"), qsTr("Off")]
                    now: Tokens.sounds ? 0 : 1
                    columns: 2
                    onChosen: place => Tokens.sounds = place === 0
                }
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
