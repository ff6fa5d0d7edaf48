// The Finding pad: grade and kind, and what was done where it cannot wait. Upright the two stand side by side.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: pad

    required property FindingPen finding
    property bool wide: false
    readonly property real column: wide ? (width - Tokens.margin) / 2 : width
    readonly property real besideX: wide ? column + Tokens.margin : 0
    readonly property real keptHeight: Tokens.mainActHeight * 0.85

    signal leave

    InkText {
        id: title

        objectName: "findingTitle"
        width: pad.width
        text: pad.finding.title
        bold: true
        fontSizeMode: Text.HorizontalFit
        minimumPixelSize: Tokens.smallText
        elide: Text.ElideRight
        Accessible.role: Accessible.StaticText
        Accessible.name: text
    }

    FindingGrades {
        id: grades

        y: title.height + Tokens.gap
        width: pad.column
        height: Tokens.padChoiceHeight
        grade: pad.finding.grade
        onChosen: grade => pad.finding.chooseGrade(grade)
    }

    FindingKinds {
        id: kinds

        y: grades.y + grades.height + Tokens.inset
        width: pad.column
        height: pad.wide ? pad.height - pad.keptHeight - Tokens.gap - y : (Tokens.touchTarget + Tokens.gap) * 2
        kind: pad.finding.kind
        onChosen: kind => pad.finding.chooseKind(kind)
    }

    FindingSign {
        objectName: "cannotWaitBoard"
        visible: pad.finding.cannotWait && !pad.wide
        kind: FindingSign.Board
        ink: Tokens.edge
        tape: Tokens.tape
        tapeInk: Tokens.tapeInk
        x: -Tokens.margin
        y: safe.y - Tokens.gap - height
        width: pad.width + Tokens.margin * 2
        height: Tokens.barrierHeight
    }

    MadeOnce {
        shown: pad.finding.cannotWait

        FindingSafe {
            visible: pad.finding.cannotWait
            x: pad.besideX
            y: safe.y
            width: pad.column
            height: safe.height
            finding: pad.finding
            boarded: pad.wide
        }
    }

    Item {
        id: safe

        y: pad.wide ? title.height + Tokens.gap : kinds.y + kinds.height + Tokens.gap + Tokens.barrierHeight + Tokens.gap
        height: keep.y - Tokens.gap - y
    }

    OctagonKey {
        id: keep

        objectName: "keepFinding"
        y: pad.height - height
        width: pad.width
        height: pad.keptHeight
        look: KeyFace.Act
        text: pad.finding.begun ? qsTr("Keep and walk on") : qsTr("Back to the walk")
        textSize: Tokens.keyText
        secondLine: pad.finding.begun ? "" : qsTr("nothing is kept")
        onClicked: {
            if (pad.finding.begun)
                pad.finding.keep();
            else
                pad.leave();
        }
    }
}
