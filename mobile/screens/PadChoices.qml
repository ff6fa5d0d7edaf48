// What to enter on the chosen part: grade, coating, torque, wall, a finding.
import QtQuick
import Kneerail.Ui

Row {
    id: choices

    property int pad: WalkModel.GradePad
    property bool choosing: true
    property bool coating: true
    property bool torque: true
    property bool wall: true
    property int grade: 0
    property int textSize: Tokens.smallText
    readonly property int count: 2 + (coating ? 1 : 0) + (torque ? 1 : 0) + (wall ? 1 : 0)
    readonly property real keyWidth: (width - spacing * (count - 1)) / count

    signal chosen(pad: int)

    function lookOf(pad: int): int {
        return choices.choosing && choices.pad === pad ? OctagonKey.Here : OctagonKey.Plain;
    }

    spacing: Tokens.gap
    height: Tokens.padChoiceHeight

    OctagonKey {
        id: gradeKey

        objectName: "gradePad"
        width: choices.keyWidth
        height: choices.height
        look: choices.lookOf(WalkModel.GradePad)
        text: qsTr("Grade")
        textSize: choices.textSize
        boldText: filled
        footed: false
        onClicked: choices.chosen(WalkModel.GradePad)
        sign: GradeGlyph {
            radius: Tokens.signHeight / 2
            grade: choices.grade > 0 ? choices.grade : 3
            ink: gradeKey.filled ? gradeKey.inkColour : "transparent"
            ground: false
        }
    }

    OctagonKey {
        id: coatingKey

        objectName: "coatingPad"
        visible: choices.coating
        width: choices.keyWidth
        height: choices.height
        look: choices.lookOf(WalkModel.CoatingPad)
        text: qsTr("Coating")
        textSize: choices.textSize
        boldText: filled
        footed: false
        onClicked: choices.chosen(WalkModel.CoatingPad)
        sign: KeySign {
            kind: KeySign.Coating
            ink: coatingKey.inkColour
            width: Tokens.signWidth
            height: Tokens.signHeight
        }
    }

    OctagonKey {
        id: torqueKey

        objectName: "torquePad"
        visible: choices.torque
        width: choices.keyWidth
        height: choices.height
        look: choices.lookOf(WalkModel.TorquePad)
        text: qsTr("Torque")
        textSize: choices.textSize
        boldText: filled
        footed: false
        onClicked: choices.chosen(WalkModel.TorquePad)
        sign: KeySign {
            kind: KeySign.Torque
            ink: torqueKey.inkColour
            width: Tokens.signWidth
            height: Tokens.signHeight
        }
    }

    OctagonKey {
        id: wallKey

        objectName: "wallPad"
        visible: choices.wall
        width: choices.keyWidth
        height: choices.height
        look: choices.lookOf(WalkModel.WallPad)
        text: qsTr("Wall")
        textSize: choices.textSize
        boldText: filled
        footed: false
        onClicked: choices.chosen(WalkModel.WallPad)
        sign: KeySign {
            kind: KeySign.Wall
            ink: wallKey.inkColour
            width: Tokens.signWidth
            height: Tokens.signHeight
        }
    }

    OctagonKey {
        id: findingKey

        objectName: "findingPad"
        width: choices.keyWidth
        height: choices.height
        look: choices.lookOf(WalkModel.FindingPad)
        text: qsTr("Finding")
        textSize: choices.textSize
        boldText: filled
        footed: false
        onClicked: choices.chosen(WalkModel.FindingPad)
        sign: FindingSign {
            kind: FindingSign.Finding
            ink: findingKey.inkColour
            chalk: findingKey.filled ? findingKey.inkColour : Tokens.chalk
            width: Tokens.signWidth
            height: Tokens.signHeight
        }
    }
}
