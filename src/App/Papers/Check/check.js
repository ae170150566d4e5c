// Checks a proof report off line: the PDF file, its result as JSON, or the text of its code, against the list of keys in this page.
// The forms are described in docs/reference/proof-code.md; the same check in C# is src/Paper/Signing/PaperCheck.cs.
'use strict';
(() => {
  const list = JSON.parse(document.getElementById('keys').textContent);
  const utf8 = new TextEncoder();
  const hex = bytes => Array.from(bytes, b => b.toString(16).padStart(2, '0')).join('');
  const unhex = text => Uint8Array.from(text.match(/../g) ?? [], d => parseInt(d, 16));
  const same = (a, b) => a.length === b.length && a.every((x, i) => x === b[i]);
  const base64 = text => Uint8Array.from(atob(text.replace(/-/g, '+').replace(/_/g, '/')), c => c.charCodeAt(0));
  const sha256 = async bytes => new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  const join = (...parts) => Uint8Array.from(parts.flatMap(p => [...p]));
  const keyCalled = id => list.keys.find(k => k.id === id);
  const answer = (word, what, paper) => ({ word, what, paper });

  // RFC 8785: members in order of UTF-16 code units; a browser's own numbers and strings are the canonical ones.
  const canonical = v => Array.isArray(v) ? `[${v.map(canonical).join(',')}]`
    : v && typeof v === 'object' ? `{${Object.keys(v).sort().map(k => `${JSON.stringify(k)}:${canonical(v[k])}`).join(',')}}`
    : JSON.stringify(v);

  async function signed(key, message, signature) {
    const spki = base64(key.publicKey);
    if (hex(await sha256(spki)).slice(0, 16) !== key.id)
      return false;
    const imported = await crypto.subtle.importKey('spki', spki, { name: 'ECDSA', namedCurve: 'P-256' }, false, ['verify']);
    return crypto.subtle.verify({ name: 'ECDSA', hash: 'SHA-256' }, imported, signature, message);
  }

  async function signedJson(json) {
    const { signature, ...bare } = json;
    const key = keyCalled(json.key);
    return key !== undefined && typeof signature === 'string' && await signed(key, utf8.encode(canonical(bare)), base64(signature));
  }

  // RFC 4648, 6, without padding.
  function base32(text) {
    const out = [];
    let held = 0, bits = 0;
    for (const c of text.toUpperCase()) {
      const value = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567'.indexOf(c);
      if (value < 0)
        return null;
      held = (held << 5) | value;
      bits += 5;
      if (bits < 8)
        continue;
      bits -= 8;
      out.push(held >> bits & 255);
      held &= (1 << bits) - 1;
    }
    return held === 0 && bits < 5 ? Uint8Array.from(out) : null;
  }

  async function checkCode(text, around) {
    const tight = String(text).replace(/\s+/g, '');
    const bytes = /^rw1:/i.test(tight) ? base32(tight.slice(4)) : null;
    if (bytes === null || bytes.length <= 64)
      return answer('no paper', 'This is no code of a report, or it is cut short.');
    const words = new TextDecoder().decode(bytes.subarray(64));
    const f = words.split('\n');
    if (f.length !== 17)
      return answer('no paper', 'This is no code of a report, or it is cut short.');
    const key = keyCalled(f[16]);
    if (key === undefined)
      return answer('unknown', `The list in this page does not have its key ${f[16].slice(0, 16)}.`);
    if (!await signed(key, utf8.encode(`RW1:${words}`), bytes.subarray(0, 64)))
      return answer('altered', 'The code was changed after it was signed.');
    if (around !== undefined && around !== key)
      return answer('altered', 'The result and the code in it are signed with two keys.');
    if (key.revoked)
      return answer('revoked', `The house no longer stands by its key ${key.id}, since ${key.revoked.on}: ${key.revoked.why}.`, f);
    const replaced = list.superseded.find(s => s.report === f[0]);
    return replaced ? answer('superseded', `Report ${replaced.by} took its place.`, f) : answer('genuine', 'The house gave it out so, and nothing in it was changed.', f);
  }

  async function checkResult(text, around) {
    let json;
    try {
      json = JSON.parse(text);
    } catch {
      return answer('no paper', 'This is no JSON document.');
    }
    if (json === null || json.schema !== 'ramwright/proof-result/1')
      return answer('no paper', 'This is no result of a proof.');
    if (typeof json.signature !== 'string' || typeof json.key !== 'string')
      return answer('unknown', 'The result carries no signature.');
    const key = keyCalled(json.key);
    if (key === undefined)
      return answer('unknown', `The list in this page does not have its key ${json.key.slice(0, 16)}.`);
    if (!await signedJson(json))
      return answer('altered', 'Something in the result was changed after it was signed.');
    return around !== undefined && around !== key ? answer('altered', 'The file and the result in it are signed with two keys.') : checkCode(json.code, key);
  }

  // DER (X.690): the parts of one value, and one value from its parts.
  function parts(der) {
    const found = [];
    for (let at = 0; at < der.length;) {
      let size = der[at + 1], head = 2;
      if (size > 127) {
        head += size & 127;
        size = parseInt(hex(der.subarray(at + 2, at + head)), 16);
      }
      found.push({ whole: der.subarray(at, at + head + size), value: der.subarray(at + head, at + head + size) });
      at += head + size;
    }
    return found;
  }
  function der(tag, ...inner) {
    const body = join(...inner), n = body.length;
    return join([tag], n < 128 ? [n] : n < 256 ? [0x81, n] : [0x82, n >> 8, n & 255], body);
  }
  const oid = text => der(6, unhex(text));
  const data = oid('2a864886f70d010701'), sha = der(0x30, oid('608648016503040201'));

  // The one form in which the house writes a signature (RFC 5652), rebuilt: a byte that differs from it was changed.
  async function rebuild(bytes) {
    const inner = parts(parts(parts(parts(bytes)[0].value)[1].value)[0].value);
    const certificate = parts(inner[3].value)[0];
    const signer = parts(parts(inner[4].value)[0].value);
    const digest = parts(parts(parts(signer[3].value)[1].value)[1].value)[0].value, signature = signer[5].value;
    const about = parts(parts(certificate.value)[0].value);
    const attributes = join(
      der(0x30, oid('2a864886f70d010903'), der(0x31, data)),
      der(0x30, oid('2a864886f70d010904'), der(0x31, der(4, digest))),
      der(0x30, oid('2a864886f70d010910022f'), der(0x31, der(0x30, der(0x30, der(0x30, der(4, await sha256(certificate.whole))))))));
    const cms = der(0x30, oid('2a864886f70d010702'), der(0xa0, der(0x30, [2, 1, 1], der(0x31, sha), der(0x30, data), der(0xa0, certificate.whole), der(0x31,
      der(0x30, [2, 1, 1], der(0x30, about[3].whole, about[1].whole), sha, der(0xa0, attributes), der(0x30, oid('2a8648ce3d040302')), der(4, signature))))));
    const whole = join(cms, new Uint8Array(bytes.length - cms.length));
    return same(whole, bytes) ? { key: about[6].whole, digest, message: der(0x31, attributes), signature: flat(signature) } : null;
  }

  // Two integers as 64 bytes.
  const flat = sequence => join(...parts(parts(sequence)[0].value).map(n => {
    const bare = n.value[0] === 0 ? n.value.subarray(1) : n.value;
    return join(new Uint8Array(32 - bare.length), bare);
  }));

  async function checkPdf(bytes) {
    const text = Array.from({ length: Math.ceil(bytes.length / 8192) }, (_, i) => String.fromCharCode(...bytes.subarray(i * 8192, (i + 1) * 8192))).join('');
    const range = [...text.matchAll(/\/ByteRange\[0000000000 (\d{10}) (\d{10}) (\d{10})\]\/Contents</g)].at(-1);
    if (range === undefined)
      return /\/Type\/Sig|\/ByteRange|ETSI\.CAdES\.detached|\/SigFlags/.test(text)
        ? answer('altered', 'Its signature cannot be read.') : answer('unknown', 'The file carries no signature of a house.');
    const [open, close, rest] = range.slice(1).map(Number);
    const digits = text.slice(open + 1, close - 1);
    if (open !== range.index + range[0].length - 1 || close !== open + 3074 || close + rest !== bytes.length || text[close - 1] !== '>' || !/^[0-9a-f]*$/.test(digits))
      return answer('altered', 'Bytes were added, taken out or moved.');
    let cms = null;
    try {
      cms = await rebuild(unhex(digits));
    } catch {
      // It is not in the form in which signatures are written here.
    }
    if (cms === null)
      return answer('altered', 'Its signature was changed.');
    if (!same(await sha256(join(bytes.subarray(0, open), bytes.subarray(close))), cms.digest))
      return answer('altered', 'Bytes under its signature were changed.');
    const id = hex(await sha256(cms.key)).slice(0, 16);
    const key = keyCalled(id);
    if (key === undefined || !same(base64(key.publicKey), cms.key))
      return answer('unknown', `The list in this page does not have its key ${id}.`);
    if (!await signed(key, cms.message, cms.signature))
      return answer('altered', 'Its signature was changed.');
    const inside = /<<\/Type\/EmbeddedFile\/Subtype\/application#2Fjson\/Params<<[^<>]*>>\/Length (\d{1,9})>>\nstream\n/.exec(text);
    if (inside === null)
      return answer('unknown', 'The file carries no result that could be read.');
    const at = inside.index + inside[0].length;
    return checkResult(new TextDecoder().decode(bytes.subarray(at, at + Number(inside[1]))), key);
  }

  async function check(bytes) {
    if (!globalThis.crypto?.subtle)
      return answer('cannot check', 'This browser checks signatures only on pages of this machine or over https. Save this page as a file and open that.');
    if (hex(bytes.subarray(0, 5)) === '255044462d')
      return checkPdf(bytes);
    const text = new TextDecoder().decode(bytes).trim();
    return text.startsWith('{') ? checkResult(text) : checkCode(text);
  }

  function show({ word, what, paper }) {
    const at = document.getElementById('answer');
    const line = (tag, text) => Object.assign(document.createElement(tag), { textContent: text });
    at.replaceChildren(line('h2', word), line('p', what));
    if (paper) {
      const verdict = { C: 'conforms', N: 'does not conform', U: 'undecided' }[paper[4]];
      const facts = [['Report', paper[0]], ['Job', paper[1]], ['Tool', `${paper[2]}, no. ${paper[3]}`], ['Verdict', verdict], ['Runs', paper[5]], ['Mean', `${paper[6]} bar`],
        ['Standard deviation', `${paper[7]} bar`], ['Limits', `${paper[8]}..${paper[9]} ${paper[10]}`], ['Released', `${paper[11]}, ${paper[12]}`],
        ['Ledger', `entry ${paper[13]}, head ${paper[14]}`], ['Replaces', paper[15] || 'none'], ['Key', paper[16]]];
      const dl = document.createElement('dl');
      for (const [name, value] of facts)
        dl.append(line('dt', name), line('dd', value));
      at.append(dl);
      if (paper[11] > list.asOf.slice(0, 10))
        at.append(line('p', 'The list in this page is older than the report: whether it was replaced since is not known.'));
    }
    at.append(line('p', `As of the list of ${list.house}, ${list.asOf.replace('T', ' ').replace('Z', ' UTC')}.`));
  }

  const run = async bytes => show(await check(bytes).catch(() => answer('no paper', 'This cannot be read.')));
  const take = async file => run(new Uint8Array(await file.arrayBuffer()));
  const form = document.getElementById('check'), file = document.getElementById('file'), code = document.getElementById('code');
  form.addEventListener('submit', e => {
    e.preventDefault();
    if (code.value.trim())
      run(utf8.encode(code.value));
    else if (file.files.length)
      take(file.files[0]);
    else
      show(answer('nothing to check', 'Choose a file, or paste the text of a code.'));
  });
  file.addEventListener('change', () => {
    code.value = '';
    if (file.files.length)
      take(file.files[0]);
  });
  document.addEventListener('dragover', e => e.preventDefault());
  document.addEventListener('drop', e => {
    e.preventDefault();
    if (e.dataTransfer.files.length)
      take(e.dataTransfer.files[0]);
  });

  const about = document.getElementById('asof');
  about.textContent = `Keys of ${list.house}, as of ${list.asOf.replace('T', ' ').replace('Z', ' UTC')}: ${list.keys.map(k => k.id + (k.revoked ? ' (revoked)' : '')).join(', ')}.`;
  if (globalThis.crypto?.subtle)
    signedJson(list).catch(() => false).then(good => {
      if (!good || keyCalled(list.key).revoked || keyCalled(list.key).until) {
        about.textContent = 'The list of keys in this page was changed: do not use this page. Ask the house for a new one.';
        form.remove();
      }
    });
})();
