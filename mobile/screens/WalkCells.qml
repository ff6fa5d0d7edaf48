// Walk's cells of the title block: the run, the gauge and its zero, what is kept here.
import QtQuick
import Kneerail.Ui

Row {
    id: cells

    required property WalkModel walk
    property bool portrait: false
    property bool lined: false
    /// "Close visit 9" while it is being closed.
    property string closing
    readonly property bool waits: walk.waitingWords !== ""

    signal handsWanted
    signal gaugeWanted

    height: parent ? parent.height : implicitHeight

    TitleCell {
        visible: !cells.portrait && !cells.lined
        objectName: "runCell"
        caption: cells.closing !== "" ? cells.walk.siteName : qsTr("%1 · %2 walks").arg(cells.walk.siteName).arg(cells.walk.personWords)
        text: cells.closing !== "" ? cells.closing : cells.walk.runName
        onClicked: cells.handsWanted()
    }

    TitleCell {
        objectName: "gaugeCell"
        caption: cells.waits ? qsTr("Touch to take it") : cells.walk.gaugeCaption
        text: cells.waits ? cells.walk.waitingWords : cells.walk.gaugeWords
        lookAgain: cells.waits || cells.walk.gaugeOld
        onClicked: {
            if (cells.waits)
                cells.walk.takeWaiting();
            else
                cells.gaugeWanted();
        }
    }

    TitleCell {
        objectName: "throwCell"
        visible: cells.waits
        caption: qsTr("It was nobody's")
        text: qsTr("throw it away")
        onClicked: cells.walk.throwAwayWaiting()
    }

    TitleCell {
        objectName: "keptCell"
        visible: !cells.portrait && !cells.waits
        tells: true
        caption: cells.walk.keptCaption
        text: cells.walk.keptWords
    }
}
