// The sheet of a site: its sentence of keys, and what the register has of it: zones with their rates, runs, people to tell.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

FocusScope {
    id: page

    required property SiteSentence site
    property bool portrait: false
    readonly property bool padUp: site.asks
    readonly property real listWidth: padUp && !portrait ? width - pad.width : width
    readonly property real belowKeys: keys.y + keys.height + Tokens.inset

    Accessible.role: Accessible.Pane
    Accessible.name: page.site.isNew ? qsTr("A new site") : qsTr("The sheet of %1").arg(page.site.name)
    Keys.onEscapePressed: {
        if (page.site.asks)
            page.site.closePad();
        else
            page.site.leave();
    }

    Rectangle {
        anchors.fill: parent
        color: Tokens.paper
    }

    MouseArea {
        anchors.fill: parent
    }

    SentenceKeys {
        id: keys

        x: Tokens.margin
        y: Tokens.inset
        width: page.width - Tokens.margin * 2
        pieces: page.site.pieces
        spoken: qsTr("The site as a sentence")
        onChosen: piece => page.site.choosePiece(piece)
    }

    Rectangle {
        x: list.x
        y: page.belowKeys
        width: page.listWidth
        height: Tokens.keyEdge
        color: Tokens.edge
    }

    SiteFacts {
        id: list

        objectName: "siteFacts"
        x: page.padUp && !page.portrait && Tokens.leftHanded ? pad.width : 0
        y: page.belowKeys + Tokens.keyEdge
        width: page.listWidth
        height: (page.portrait && page.padUp ? pad.y : foot.y) - y
        site: page.site
    }

    SiteFoot {
        id: foot

        visible: !page.padUp || !page.portrait
        x: list.x
        y: page.height - height
        width: page.listWidth
        site: page.site
        portrait: page.portrait
    }

    MessageBar {
        objectName: "siteMessage"
        x: list.x + Tokens.inset
        width: page.listWidth - Tokens.inset * 2
        y: (page.portrait && page.padUp ? pad.y : foot.y) - height - Tokens.gap
        text: page.site.message
        canTryAgain: page.site.notKept
        onTryAgain: page.site.keep()
        onPutAway: page.site.dismissMessage()
    }

    Item {
        id: pad

        visible: page.padUp
        x: page.portrait || Tokens.leftHanded ? 0 : page.width - width
        y: page.portrait ? page.height - height : page.belowKeys
        width: page.portrait ? page.width : Tokens.padWidth
        height: page.portrait ? Math.min(Tokens.portraitPadHeight, page.height / 2) : page.height - y

        MadeOnce {
            shown: page.padUp

            AskedKeys {
                anchors.fill: pad
                sentence: page.site
                portrait: page.portrait
            }
        }
    }
}
