// Last visit's grades of a post in a row, each the cut end of a tube in its dashed ring.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Row {
    id: rings

    property list<int> grades
    /// The width they may take.
    property real most: Tokens.padWidth
    readonly property real radius: Math.min(Tokens.glyphInList, most / Math.max(1, grades.length) / 2 - Tokens.smallGap)

    spacing: Tokens.smallGap / 2

    Repeater {
        model: rings.grades

        GradeGlyph {
            required property int modelData

            radius: rings.radius
            lastTime: modelData
        }
    }
}
