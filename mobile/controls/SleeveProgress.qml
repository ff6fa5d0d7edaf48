// Work that takes long: what, a tube that a sleeve closes, and true counts. A way out hangs below it.
import QtQuick
import Kneerail.Ui

Item {
    id: progress

    property string what
    property int done: 0
    property int all: 0
    property string counts: qsTr("%L1 of %L2 done").arg(done).arg(all)
    default property alias acts: keys.data

    implicitWidth: Tokens.padWidth
    implicitHeight: column.implicitHeight
    Accessible.role: Accessible.ProgressBar
    Accessible.name: qsTr("%1: %2").arg(what).arg(counts)

    Column {
        id: column

        width: parent.width
        spacing: Tokens.gap

        InkText {
            width: parent.width
            text: progress.what
            bold: true
            font.pixelSize: Tokens.labelText
            wrapMode: Text.Wrap
        }

        SleeveTube {
            width: parent.width
            height: Tokens.sleeveHeight
            share: progress.all > 0 ? progress.done / progress.all : 0
            stroke: Tokens.keyEdge
            zinc: Tokens.zinc
            light: Tokens.zincLight
            shade: Tokens.zincShade
            edge: Tokens.edge
            sleeveFill: Tokens.act
        }

        InkText {
            width: parent.width
            text: progress.counts
            color: Tokens.ink2
            wrapMode: Text.Wrap
        }

        Row {
            id: keys

            spacing: Tokens.gap
        }
    }
}
