// Walk's cells of the title block: the run, the gauge and its zero, what is kept here.
import QtQuick
import Kneerail.Ui

Row {
    id: cells

    required property WalkModel walk
    property bool portrait: false
    height: parent ? parent.height : implicitHeight

    readonly property bool waits: walk.waitingWords !== ""

    TitleCell {
        visible: !cells.portrait
        caption: qsTr("%1 · run").arg(cells.walk.siteName)
        text: cells.walk.runName
    }

    TitleCell {
        objectName: "gaugeCell"
        caption: cells.waits ? qsTr("Touch to take it") : cells.walk.gaugeCaption
        text: cells.waits ? cells.walk.waitingWords : cells.walk.gaugeWords
        lookAgain: cells.waits || cells.walk.gaugeOld
        onClicked: cells.walk.takeWaiting()
    }

    TitleCell {
        visible: !cells.portrait
        caption: cells.walk.keptCaption
        text: cells.walk.keptWords
        sign: KeySign {
            kind: KeySign.JointApart
            ink: Tokens.ink
            width: Tokens.signWidth
            height: Tokens.signHeight
        }
    }
}
