package wattle.server;

import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.jsonrpc.MessageConsumer;
import org.eclipse.lsp4j.jsonrpc.MessageProducer;
import org.eclipse.lsp4j.jsonrpc.RemoteEndpoint;
import org.eclipse.lsp4j.jsonrpc.json.ConcurrentMessageProcessor;
import org.eclipse.lsp4j.jsonrpc.json.MessageJsonHandler;
import org.eclipse.lsp4j.services.LanguageClient;

/** Builds a session that reads its messages as {@link EditorMessages} does; all else is as the library has it. */
final class EditorLauncher extends Launcher.Builder<LanguageClient> {
  private final EditorInput in;
  private final Unanswered unanswered;
  private MessageJsonHandler json;
  private RemoteEndpoint refusals;

  EditorLauncher(EditorInput in, Unanswered unanswered) {
    this.in = in;
    this.unanswered = unanswered;
  }

  @Override
  protected MessageJsonHandler createJsonHandler() {
    json = super.createJsonHandler();
    return json;
  }

  @Override
  protected RemoteEndpoint createRemoteEndpoint(MessageJsonHandler handler) {
    refusals = super.createRemoteEndpoint(handler);
    return refusals;
  }

  /** What comes in is checked against the protocol; what goes out is our own, and is not worth the time at each key stroke. */
  @Override
  protected MessageConsumer wrapMessageConsumer(MessageConsumer consumer) {
    return consumer == refusals ? super.wrapMessageConsumer(consumer) : consumer;
  }

  @Override
  protected ConcurrentMessageProcessor createMessageProcessor(
      MessageProducer reader, MessageConsumer consumer, LanguageClient editor) {
    return super.createMessageProcessor(new EditorMessages(in, json, refusals, unanswered), consumer, editor);
  }
}
