// The sorts of value that both engines have. 'span' is a length of time: a plain number of days to the peer.

export type Kind = 'number' | 'text' | 'yesno' | 'date' | 'span';
