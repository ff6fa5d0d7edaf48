// Five keys, one a grade. One touch gives it.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: pad

    property list<string> words
    property list<string> tests
    property int now: 0
    property int last: 0
    property bool twoColumns: false

    signal graded(grade: int)

    Grid {
        id: keys

        readonly property int rows_: pad.twoColumns ? 3 : 5
        readonly property real keyHeight: (pad.height - spacing * (rows_ - 1)) / rows_

        anchors.fill: parent
        columns: pad.twoColumns ? 2 : 1
        spacing: Tokens.gap * 0.75

        Repeater {
            model: pad.words

            GradeKey {
                required property int index
                required property string modelData

                objectName: "grade" + grade
                grade: index + 1
                width: pad.twoColumns ? (pad.width - keys.spacing) / 2 : pad.width
                height: keys.keyHeight
                text: modelData
                test: pad.tests[index] ?? ""
                now: pad.now === grade
                lastTime: pad.last === grade
                onClicked: pad.graded(grade)
            }
        }
    }
}
