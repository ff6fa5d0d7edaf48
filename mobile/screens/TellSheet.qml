// Nobody was told of what cannot wait: the people to tell with their numbers, one touch each when they have heard it.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Rectangle {
    id: sheet

    required property HazardLine line
    property string undoes
    property bool portrait: false
    readonly property real inner: width - Tokens.pageMargin * 2
    readonly property list<string> offices: [qsTr("the owner's office"), qsTr("police or rescue"), qsTr("staff at the site")]

    signal undo
    signal findingWanted

    color: Tokens.paper

    // What is under the sheet is not touched through it.
    MouseArea {
        anchors.fill: parent
    }

    FindingSign {
        id: board

        kind: FindingSign.Board
        ink: Tokens.edge
        tape: Tokens.tape
        tapeInk: Tokens.tapeInk
        width: parent.width
        height: Tokens.barrierHeight
    }

    Flickable {
        x: Tokens.pageMargin
        y: board.height + Tokens.margin
        width: sheet.inner
        height: back.y - y - Tokens.gap
        contentHeight: list.height
        interactive: contentHeight > height
        clip: interactive

        Column {
            id: list

            width: parent.width
            spacing: Tokens.margin

            InkText {
                objectName: "tellTitle"
                width: parent.width
                text: sheet.line.title
                bold: true
                font.pixelSize: Tokens.mainText
                wrapMode: Text.Wrap
                Accessible.role: Accessible.StaticText
                Accessible.name: text
            }

            InkText {
                objectName: "tellStands"
                width: parent.width
                text: sheet.line.toldWords === "" ? qsTr("%1 · nobody is told").arg(sheet.line.standsWords) : qsTr("%1 · %2").arg(sheet.line.standsWords).arg(sheet.line.toldWords)
                color: Tokens.ink2
                wrapMode: Text.Wrap
                Accessible.role: Accessible.StaticText
                Accessible.name: text
            }

            InkText {
                width: parent.width
                text: people.count > 0 ? qsTr("Who was told? Touch the name when they have heard it: who and when are kept.") : qsTr("This site's register names nobody to tell. Say which office was told.")
                bold: true
                wrapMode: Text.Wrap
            }

            Grid {
                id: grid

                width: parent.width
                columns: sheet.portrait ? 1 : 2
                spacing: Tokens.gap

                Repeater {
                    id: people

                    model: sheet.line

                    OctagonKey {
                        required property int index
                        required property string name
                        required property string telephone
                        required property string told
                        required property string tells

                        objectName: "tell" + index
                        width: (grid.width - grid.spacing * (grid.columns - 1)) / grid.columns
                        height: Tokens.mainActHeight * 1.25
                        look: told !== "" ? KeyFace.Chosen : KeyFace.Plain
                        enabled: sheet.line.writes
                        text: told === "" ? name : qsTr("%1 · %2").arg(name).arg(told)
                        secondLine: telephone
                        secondTextSize: Tokens.keyText
                        textSize: Tokens.keyText
                        spoken: tells
                        onClicked: sheet.line.tell(index)
                    }
                }
            }

            NamedKeys {
                visible: sheet.line.writes
                width: parent.width
                caption: qsTr("Or an office, without a name:")
                named: "office"
                names: sheet.offices
                columns: 3
                textSize: Tokens.labelText
                captionSize: Tokens.bodyText
                onChosen: place => sheet.line.tellOffice(sheet.offices[place])
            }

            InkText {
                width: parent.width
                text: qsTr("To tell somebody holds nobody back. What cannot wait stays until a person ends it.")
                color: Tokens.ink2
                font.pixelSize: Tokens.smallText
                wrapMode: Text.Wrap
            }
        }
    }

    OctagonKey {
        id: back

        objectName: "closeTelling"
        x: Tokens.pageMargin
        y: parent.height - height - Tokens.margin
        width: (sheet.inner - Tokens.gap * 2) / 3
        height: Tokens.mainActHeight
        text: qsTr("Back")
        textSize: Tokens.keyText
        onClicked: sheet.line.close()
    }

    OctagonKey {
        objectName: "undoTelling"
        x: back.x + back.width + Tokens.gap
        y: back.y
        width: back.width
        height: back.height
        text: qsTr("Undo")
        textSize: Tokens.keyText
        secondLine: sheet.undoes
        enabled: sheet.undoes !== "" && sheet.line.writes
        onClicked: sheet.undo()
    }

    OctagonKey {
        objectName: "openTold"
        x: back.x + (back.width + Tokens.gap) * 2
        y: back.y
        width: back.width
        height: back.height
        look: KeyFace.Act
        text: qsTr("Open the finding")
        textSize: Tokens.keyText
        onClicked: sheet.findingWanted()
    }
}
