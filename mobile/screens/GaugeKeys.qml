// The gauge's own pad: what is known of it, its zero and its check foil, and the digits while one of them is read.
import QtQuick
import Kneerail.Ui

Item {
    id: pad

    required property WalkModel walk
    property bool wide: false
    readonly property GaugeCheck check: walk.check
    readonly property bool reading: check.what !== GaugeCheck.Nothing
    readonly property real column: wide ? (width - Tokens.margin) / 2 : width
    readonly property real besideX: wide && !Tokens.leftHanded ? 0 : wide ? column + Tokens.margin : 0
    readonly property real digitsX: wide && !Tokens.leftHanded ? column + Tokens.margin : 0

    signal leave
    signal handsWanted

    onVisibleChanged: {
        if (visible)
            pad.check.refresh();
    }

    Column {
        id: said

        visible: !pad.reading
        x: pad.besideX
        width: pad.column
        spacing: Tokens.gap

        InkText {
            width: parent.width
            text: pad.check.title
            bold: true
            font.pixelSize: Tokens.keyText
        }

        InkText {
            objectName: "gaugeFacts"
            width: parent.width
            text: pad.check.facts
            wrapMode: Text.Wrap
            Accessible.role: Accessible.StaticText
            Accessible.name: text
        }
    }

    Column {
        visible: !pad.reading
        x: pad.digitsX
        y: pad.wide ? 0 : said.height + Tokens.margin
        width: pad.column
        spacing: Tokens.gap

        OctagonKey {
            objectName: "zeroGauge"
            visible: pad.check.offered
            width: parent.width
            height: Tokens.digitKeyHeight
            text: qsTr("Zero")
            secondLine: qsTr("on the bare plate")
            onClicked: pad.check.begin(GaugeCheck.Zero)
        }

        OctagonKey {
            objectName: "checkFoil"
            visible: pad.check.offered
            width: parent.width
            height: Tokens.digitKeyHeight
            text: qsTr("Check foil")
            secondLine: pad.check.foilWords !== "" ? pad.check.foilWords : qsTr("a foil of known thickness")
            onClicked: pad.check.begin(GaugeCheck.Foil)
        }

        OctagonKey {
            objectName: "handsKey"
            width: parent.width
            height: Tokens.digitKeyHeight
            look: OctagonKey.Soft
            text: qsTr("Who walks, and with what")
            onClicked: pad.handsWanted()
        }
    }

    OctagonKey {
        objectName: "leaveGauge"
        visible: !pad.reading
        x: pad.besideX
        y: parent.height - height
        width: pad.column
        height: Tokens.mainActHeight
        look: OctagonKey.Act
        text: qsTr("Back to the walk")
        onClicked: pad.leave()
    }

    Row {
        id: choices

        visible: pad.reading
        x: pad.besideX
        width: pad.column
        spacing: Tokens.gap

        OctagonKey {
            objectName: "zeroGauge"
            width: (parent.width - Tokens.gap) / 2
            height: pad.wide ? Tokens.mainActHeight : Tokens.padChoiceHeight
            look: pad.check.what === GaugeCheck.Zero ? OctagonKey.Here : OctagonKey.Plain
            text: qsTr("Zero")
            textSize: Tokens.labelText
            onClicked: pad.check.begin(GaugeCheck.Zero)
        }

        OctagonKey {
            objectName: "checkFoil"
            width: (parent.width - Tokens.gap) / 2
            height: pad.wide ? Tokens.mainActHeight : Tokens.padChoiceHeight
            look: pad.check.what === GaugeCheck.Foil ? OctagonKey.Here : OctagonKey.Plain
            text: qsTr("Check foil")
            textSize: Tokens.labelText
            onClicked: pad.check.begin(GaugeCheck.Foil)
        }
    }

    CoatingKeys {
        visible: pad.reading
        x: pad.digitsX
        y: pad.wide ? 0 : choices.height + Tokens.inset
        width: pad.column
        height: (pad.wide ? pad.height : acts.y - Tokens.inset) - y
        signs: pad.check.what === GaugeCheck.Zero
        onDigit: digit => pad.check.digit(digit)
        onNextSlot: pad.check.nextSlot()
        onSigned: pad.check.sign()
        onErase: pad.check.backspace()
    }

    GaugeActs {
        id: acts

        visible: pad.reading
        x: pad.besideX
        y: pad.wide ? choices.height + Tokens.gap : pad.height - height
        width: pad.column
        height: pad.wide ? pad.height - y : Tokens.mainActHeight
        stacked: pad.wide
        check: pad.check
        undoes: pad.walk.undoWords
        onUndo: pad.walk.undo()
    }
}
