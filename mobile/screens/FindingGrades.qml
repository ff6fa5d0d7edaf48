// Five keys in a row, each with a grade's sign and number: how bad what was found is.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Row {
    id: row

    property int grade: 0

    signal chosen(grade: int)

    spacing: Tokens.gap * 0.75

    Repeater {
        model: 5

        OctagonKey {
            id: key

            required property int index
            readonly property int grade: index + 1

            objectName: "findingGrade" + grade
            width: (row.width - row.spacing * 4) / 5
            height: row.height
            look: row.grade === grade ? KeyFace.Chosen : KeyFace.Plain
            text: grade
            spoken: qsTr("Grade %1").arg(grade)
            textSize: Tokens.labelText
            onClicked: row.chosen(grade)
            sign: GradeGlyph {
                radius: Math.min(Tokens.glyphInList, key.height * 0.23)
                width: radius * 2 + Tokens.smallGap
                height: width
                grade: key.grade
                ground: false
            }
        }
    }
}
